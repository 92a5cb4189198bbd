/** Pictures of frost and snow, of the two estimates of the ground, and of what a changed soil does. @module */
import * as Plot from "@observablehq/plot";
import type { EstimateMonth, FrostDay, SummarisedSoil } from "../../soil/mod.ts";
import { MONTH_MIDDLES, MONTHS } from "../kit/calendar.ts";
import { dataTable } from "../kit/data_table.ts";
import { shown } from "../kit/reader.ts";
import { type DisplayItem, figure } from "../kit/figure.ts";
import { PALETTE } from "../kit/palette.ts";

const DAY_AXIS = {
  label: null,
  domain: [0, 365] as [number, number],
  ticks: [...MONTH_MIDDLES],
  tickFormat: (day: number) => MONTHS[Math.floor(day / 30.5)]!,
  tickSize: 0,
};

/** Snow above, frozen ground below, day by day. */
export function frostSnowChart(result: SummarisedSoil): DisplayItem {
  const { frost, deepestSnow, frozenDays } = result.summary;
  const snow = Array.from(result.snowDepth, (depth, day) => ({ day, depth }));
  const reach = Math.max(result.frostDepth, result.tubeDepth) + 0.2;
  return figure({
    height: 280,
    x: DAY_AXIS,
    y: {
      label: "snow depth (up) and frost depth (down), m",
      domain: [-reach, Math.max(0.1, deepestSnow * 1.1)],
      tickFormat: (value: number) => Math.abs(value).toFixed(1),
      grid: true,
    },
    marks: [
      Plot.areaY(snow, { x: "day", y: "depth", fill: "#b7cff2" }),
      Plot.areaY(frost, {
        x: "day",
        y1: (one: FrostDay) => one.frozen ? -one.top : NaN,
        y2: (one: FrostDay) => one.frozen ? -one.bottom : NaN,
        fill: PALETTE.cold,
      }),
      Plot.ruleY([0], { stroke: PALETTE.ink }),
      Plot.ruleY([-result.tubeDepth], { stroke: PALETTE.latent, strokeDasharray: "4 3" }),
    ],
  }, {
    title: "Snow above, frozen ground below",
    alt: result.frostDepth > 0
      ? `Snow up to ${
        shown(deepestSnow, "depth")
      }; the ground is frozen on ${frozenDays} days, down to ${shown(result.frostDepth, "depth")}.`
      : `Snow up to ${
        shown(deepestSnow, "depth")
      }; the undisturbed ground does not freeze in this year.`,
    note: "Open, grassed ground beside the house; it thaws from above and from below.",
    legend: [
      { label: "snow", colour: "#b7cff2" },
      { label: "frozen ground", colour: PALETTE.cold },
      { label: "tube depth", colour: PALETTE.latent, sign: "dash" },
    ],
    table: dataTable(MONTH_MIDDLES.map(Math.floor), [
      { head: "middle of", value: (_, month) => MONTHS[month]! },
      { head: "snow", value: (day) => result.snowDepth[day]!, kind: "depth" },
      { head: "frozen from", value: (day) => ends(frost[day]!, "top"), kind: "depth" },
      { head: "frozen to", value: (day) => ends(frost[day]!, "bottom"), kind: "depth" },
    ]),
  });
}

function ends(day: FrostDay, end: "top" | "bottom"): number | null {
  return day.frozen ? day[end] : null;
}

/** The two estimates of the undisturbed ground at tube depth. */
export function twoEstimatesChart(result: SummarisedSoil): DisplayItem {
  const rows = result.summary.estimates;
  const name = (row: EstimateMonth) => MONTHS[row.month]!;
  const widest = rows.reduce((a, b) => Math.abs(a.difference) > Math.abs(b.difference) ? a : b);
  return figure({
    height: 280,
    x: { domain: MONTHS, label: null },
    y: { label: "ground at tube depth, degC", grid: true },
    marks: [
      Plot.ruleY([0], { stroke: PALETTE.ink }),
      Plot.line(rows, {
        x: name,
        y: "wave",
        stroke: PALETTE.air,
        strokeWidth: 2,
        strokeDasharray: "5 3",
      }),
      Plot.line(rows, { x: name, y: "column", stroke: PALETTE.soil, strokeWidth: 2.5 }),
    ],
  }, {
    title: "Two estimates of the undisturbed ground at tube depth",
    alt: `At ${shown(result.tubeDepth, "depth")} the column's annual mean is ${
      shown(result.difference.mean, "temperatureDifference")
    } above that of the wave from air temperature; the months differ most in ${name(widest)}, by ${
      shown(widest.difference, "temperatureDifference")
    }.`,
    legend: [
      { label: "column: sun, wind, evaporation, snow, frost", colour: PALETTE.soil, sign: "line" },
      { label: "wave from air temperature and snow", colour: PALETTE.air, sign: "dash" },
    ],
    table: dataTable(rows, [
      { head: "month", value: name },
      { head: "column", value: (row) => row.column, kind: "temperature" },
      { head: "wave", value: (row) => row.wave, kind: "temperature" },
      {
        head: "column minus wave",
        value: (row) => row.difference,
        kind: "temperatureDifference",
      },
    ]),
  });
}

/** Span of the year at tube depth and frost depth for each changed soil. */
export function sensitivityChart(result: SummarisedSoil): DisplayItem {
  const rows = result.sensitivity;
  const { all } = result.summary.range;
  const y = { domain: rows.map(({ change }) => change), label: null } as const;
  const span = ([low, high]: readonly [number, number]) =>
    `${shown(low, "temperature")} to ${shown(high, "temperature")}`;
  const freezes = all.frostDepth[1] > 0;
  const frostPlot: Plot.PlotOptions = {
    height: 210,
    marginLeft: 262,
    x: {
      label: "frost depth, m",
      grid: true,
      domain: [0, Math.max(result.tubeDepth, all.frostDepth[1]) * 1.05],
    },
    y,
    marks: [
      Plot.barX(rows, { y: "change", x: "frostDepth", fill: PALETTE.cold }),
      Plot.ruleX([result.tubeDepth], { stroke: PALETTE.latent, strokeDasharray: "4 3" }),
    ],
  };
  return figure([
    {
      height: 210,
      marginLeft: 262,
      x: { label: "lowest to highest at tube depth, degC", grid: true, nice: true },
      y,
      marks: [
        Plot.barX(rows, {
          y: "change",
          x1: "minAtTubeDepth",
          x2: "maxAtTubeDepth",
          fill: "#e6c9a8",
        }),
        Plot.tickX(rows, {
          y: "change",
          x: "meanAtTubeDepth",
          stroke: PALETTE.ink,
          strokeWidth: 3,
        }),
        Plot.ruleX([0], { stroke: PALETTE.cold }),
      ],
    },
    ...(freezes ? [frostPlot] : []),
  ], {
    title: "The same ground with one thing changed",
    alt: `Lowest at tube depth ${span(all.lowest)}, highest ${
      span(all.highest)
    }; the last row is bare ground kept clear of snow.`,
    legend: [
      { label: "lowest to highest day", colour: "#e6c9a8" },
      { label: "mean of the year", colour: PALETTE.ink, sign: "line" },
      ...(freezes
        ? [
          { label: "frost depth", colour: PALETTE.cold },
          { label: "tube depth", colour: PALETTE.latent, sign: "dash" as const },
        ]
        : []),
    ],
  });
}
