/** Pictures of the house chapter. @module */
import * as Plot from "@observablehq/plot";
import type { ClimateYear } from "../../climate/types.ts";
import type { SummarisedHouse } from "../../house/mod.ts";
import { hourName } from "../kit/calendar.ts";
import { dataTable } from "../kit/data_table.ts";
import { shown } from "../kit/reader.ts";
import { durationFigure } from "../kit/duration.ts";
import { type DisplayItem, figure } from "../kit/figure.ts";
import { lineLegend, type TimeLine, timePlot } from "../kit/lines.ts";
import { PALETTE } from "../kit/palette.ts";

/** Colours of the parts, in their fixed order; further parts begin again. */
const PART_COLOURS = [
  PALETTE.cold,
  PALETTE.ink,
  PALETTE.soil,
  PALETTE.air,
  PALETTE.latent,
  PALETTE.warm,
];

interface LossBar {
  readonly name: string;
  readonly conductance: number;
  readonly share: number;
  readonly colour: string;
  readonly from: number;
}

/** Parts from the largest, each with its colour and where it starts in the stack. */
function lossBars(result: SummarisedHouse): LossBar[] {
  let from = 0;
  return result.summary.lossShares
    .map((part, index) => ({ ...part, colour: PART_COLOURS[index % PART_COLOURS.length]! }))
    .filter((part) => part.conductance > 0)
    .sort((a, b) => b.conductance - a.conductance)
    .map((part) => {
      const bar = { ...part, from };
      from += part.conductance;
      return bar;
    });
}

/** The whole loss as one stacked bar, and below it each part from the largest. */
export function lossesChart(result: SummarisedHouse): DisplayItem {
  const bars = lossBars(result);
  const largest = bars[0]!;
  const whole = shown(result.lossCoefficient, "conductance");
  const domain = [0, result.lossCoefficient * 1.02];
  const sides = { marginLeft: 110, marginRight: 130 };
  return figure([{
    ...sides,
    height: 74,
    marginTop: 8,
    marginBottom: 30,
    x: { domain, label: null, grid: true },
    y: { domain: ["total"], label: null, padding: 0.1 },
    marks: [
      Plot.barX(bars, {
        x1: "from",
        x2: (bar: LossBar) => bar.from + bar.conductance,
        y: () => "total",
        fill: "colour",
        stroke: "white",
      }),
      Plot.text(bars.filter((bar) => bar.share >= 0.07), {
        x: (bar: LossBar) => bar.from + bar.conductance / 2,
        y: () => "total",
        text: (bar: LossBar) => shown(bar.share, "share"),
        fill: "white",
        fontWeight: "bold",
      }),
      Plot.text([result.lossCoefficient], {
        x: (value: number) => value,
        y: () => "total",
        text: () => whole,
        textAnchor: "start",
        dx: 5,
      }),
    ],
  }, {
    ...sides,
    height: 50 + bars.length * 34,
    marginTop: 8,
    x: { domain, label: "heat loss per degree between inside and outside, W/K", grid: true },
    y: { domain: bars.map((bar) => bar.name), label: null, padding: 0.3 },
    marks: [
      Plot.barX(bars, { x: "conductance", y: "name", fill: "colour" }),
      Plot.text(bars, {
        x: "conductance",
        y: "name",
        text: (bar: LossBar) =>
          `${shown(bar.conductance, "conductance")}, ${shown(bar.share, "share")}`,
        textAnchor: "start",
        dx: 5,
      }),
      Plot.ruleX([0], { stroke: PALETTE.ink }),
    ],
  }], {
    title: "Where the heat goes",
    alt: `Heat loss as a stacked bar and part by part; the largest is ${largest.name} with ${
      shown(largest.share, "share")
    } of ${whole}.`,
    table: dataTable(bars, [
      { head: "part", value: (bar) => bar.name },
      { head: "loss", value: (bar) => bar.conductance, kind: "conductance" },
      { head: "share", value: (bar) => bar.share, kind: "share" },
    ]),
  });
}

/** Hours of the year the free-running house and the outdoors stay at or below a temperature. */
export function freeRunningDurationChart(
  result: SummarisedHouse,
  climate: ClimateYear,
): DisplayItem {
  const { hoursBelow } = result.summary;
  return durationFigure({
    curves: [
      {
        label: "outdoors",
        colour: PALETTE.cold,
        series: climate.dryBulb,
        hoursBelow: hoursBelow.map(({ outdoors }) => outdoors),
        dashed: true,
      },
      {
        label: "house, screening year",
        colour: PALETTE.warm,
        series: result.freeRunning.airTemperature,
        hoursBelow: hoursBelow.map(({ inside }) => inside),
      },
    ],
    axis: "air temperature, degC",
    kind: "temperature",
    limits: hoursBelow.map(({ limit }) => limit),
    title: "Free-running house, screening year: hours at or below each temperature",
    alt: `In the screening year (floor as separate columns) the house without heating falls to ${
      shown(result.coldestHour, "temperature")
    } and spends ${shown(result.crop.freezing.hours, "hours")} below freezing.`,
  });
}

/** The seven days around the coldest hour of the house in its screening year. */
export function coldestWeekChart(result: SummarisedHouse, climate: ClimateYear): DisplayItem {
  const { start, days } = result.summary.coldestWeek;
  const week = { start, hours: 168 };
  const temperatures: TimeLine[] = [
    { label: "outdoors", colour: PALETTE.cold, series: climate.dryBulb, dashed: true },
    {
      label: "house, screening year",
      colour: PALETTE.warm,
      series: result.freeRunning.airTemperature,
    },
  ];
  const sun: TimeLine = {
    label: "radiation",
    colour: PALETTE.ink,
    series: climate.globalHorizontal,
  };
  const heater: TimeLine = {
    label: "heat needed to hold the set point",
    colour: PALETTE.latent,
    series: result.heated.heater.map((heat) => heat / 1000),
  };
  const heated = days.some(({ heatDemand }) => heatDemand > 0);
  return figure([
    timePlot({ ...week, lines: temperatures, axis: "air temperature, degC", limits: [0] }),
    timePlot({ ...week, lines: [sun], axis: "radiation, W/m²", height: 150 }),
    ...(heated ? [timePlot({ ...week, lines: [heater], axis: "heater, kW", height: 150 })] : []),
  ], {
    title: "The coldest week of the house, screening year",
    alt:
      `Seven days from ${
        hourName(start)
      }: outdoor and indoor temperature, radiation and heat demand; ` +
      `lowest indoor temperature ${shown(result.coldestHour, "temperature")}.`,
    legend: lineLegend([...temperatures, sun, ...(heated ? [heater] : [])]),
    table: dataTable(days, [
      { head: "day", value: ({ hour }) => hourName(hour).replace(" 00:00", "") },
      { head: "outdoors lowest", value: (day) => day.outdoorsLowest, kind: "temperature" },
      { head: "inside lowest", value: (day) => day.insideLowest, kind: "temperature" },
      { head: "inside highest", value: (day) => day.insideHighest, kind: "temperature" },
      { head: "radiation", value: (day) => day.radiation, kind: "radiation" },
      { head: "heat demand", value: (day) => day.heatDemand, kind: "energy" },
    ]),
  });
}
