/** Pictures of the house chapter. @module */
import * as Plot from "@observablehq/plot";
import type { ClimateYear } from "../climate/types.ts";
import type { HouseResult } from "../house/types.ts";
import { hourName } from "./calendar.ts";
import { dataTable } from "./data_table.ts";
import { showSi } from "./display_units.ts";
import { durationChart } from "./duration.ts";
import { type DisplayItem, figure } from "./figure.ts";
import { coldestWeekStart, lineLegend, type TimeLine, timePlot, yearWindow } from "./lines.ts";
import { PALETTE } from "./palette.ts";

/** What the house loses, part by part, as bars from the largest. */
export function lossesChart(result: HouseResult): DisplayItem {
  const parts = [...result.lossParts].sort((a, b) => b.conductance - a.conductance);
  const largest = parts[0]!;
  return figure({
    height: 60 + parts.length * 34,
    marginLeft: 190,
    marginRight: 130,
    x: { label: "heat lost for each kelvin between inside and outside, W/K", grid: true },
    y: { domain: parts.map((part) => part.name), label: null, padding: 0.3 },
    marks: [
      Plot.barX(parts, { x: "conductance", y: "name", fill: PALETTE.cold }),
      Plot.text(parts, {
        x: "conductance",
        y: "name",
        text: (part: { conductance: number }) =>
          `${showSi(part.conductance, "conductance")}, ${
            showSi(part.conductance / result.lossCoefficient, "share")
          }`,
        textAnchor: "start",
        dx: 5,
      }),
      Plot.ruleX([0], { stroke: PALETTE.ink }),
    ],
  }, {
    title: "Where the heat goes",
    alt: `Heat loss by part; the largest is ${largest.name} with ${
      showSi(largest.conductance / result.lossCoefficient, "share")
    } of ${showSi(result.lossCoefficient, "conductance")}.`,
    table: dataTable(parts, [
      { head: "part", value: (part) => part.name },
      { head: "loss", value: (part) => part.conductance, kind: "conductance" },
      { head: "share", value: (part) => part.conductance / result.lossCoefficient, kind: "share" },
    ]),
  });
}

/** Hours of the year the free-running house and the outdoors stay at or below a temperature. */
export function freeRunningDurationChart(result: HouseResult, climate: ClimateYear): DisplayItem {
  return durationChart({
    curves: [
      { label: "outdoors", colour: PALETTE.cold, series: climate.dryBulb, dashed: true },
      {
        label: "house without a store",
        colour: PALETTE.warm,
        series: result.freeRunning.airTemperature,
      },
    ],
    axis: "air temperature, degC",
    kind: "temperature",
    limits: [-20, -10, 0, 5, 10, 30],
    title: "Free-running house: how long it is how cold",
    alt: `The house without a store and without heat falls to ${
      showSi(result.coldestHourNoStore, "temperature")
    } and spends ${showSi(result.hoursBelowFreezingNoStore, "hours")} below freezing.`,
  });
}

/** The seven days around the coldest hour of the house without a store. */
export function coldestWeekChart(result: HouseResult, climate: ClimateYear): DisplayItem {
  const inside = result.freeRunning.airTemperature;
  const start = coldestWeekStart(inside);
  const window = (series: ArrayLike<number>) => yearWindow(series, start, 168);
  const temperatures: TimeLine[] = [
    { label: "outdoors", colour: PALETTE.cold, series: climate.dryBulb, dashed: true },
    { label: "house without a store", colour: PALETTE.warm, series: inside },
  ];
  const sun: TimeLine = {
    label: "radiation",
    colour: PALETTE.ink,
    series: climate.globalHorizontal,
  };
  const days = Array.from({ length: 7 }, (_, day) => day);
  const dayOf = (series: ArrayLike<number>, day: number) =>
    Array.from(window(series).slice(day * 24, day * 24 + 24));
  return figure([
    timePlot({
      lines: temperatures,
      start,
      hours: 168,
      axis: "air temperature, degC",
      limits: [0],
    }),
    timePlot({ lines: [sun], start, hours: 168, axis: "radiation, W/m²", height: 160 }),
  ], {
    title: "The coldest week of the house without a store",
    alt: `From ${hourName(start)}: outdoor and indoor temperature and radiation for seven days; ` +
      `lowest indoor temperature ${showSi(result.coldestHourNoStore, "temperature")}.`,
    legend: lineLegend([...temperatures, sun]),
    table: dataTable(days, [
      { head: "day", value: (day) => hourName(start + day * 24).replace(" 00:00", "") },
      {
        head: "outdoors lowest",
        value: (day) => Math.min(...dayOf(climate.dryBulb, day)),
        kind: "temperature",
      },
      {
        head: "inside lowest",
        value: (day) => Math.min(...dayOf(inside, day)),
        kind: "temperature",
      },
      {
        head: "inside highest",
        value: (day) => Math.max(...dayOf(inside, day)),
        kind: "temperature",
      },
      {
        head: "radiation",
        value: (day) => dayOf(climate.globalHorizontal, day).reduce((a, b) => a + b, 0) / 1000,
        kind: "radiation",
      },
    ]),
  });
}
