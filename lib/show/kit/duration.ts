/** Duration curves: hours a value stays below a limit. @module */
import type { Kind } from "../../units/mod.ts";
import * as Plot from "@observablehq/plot";
import { dataTable } from "./data_table.ts";
import { type DisplayItem, figure } from "./figure.ts";
import { PALETTE } from "./palette.ts";
import { type Point, thin } from "./thin.ts";

/** One curve. */
export interface DurationSeries {
  /** name shown */
  readonly label: string;
  /** colour of the line or key */
  readonly colour: string;
  /** hourly values, any order */
  readonly series: Float64Array;
  /** hours below each of the limits, in their order */
  readonly hoursBelow: readonly number[];
  /** broken line */
  readonly dashed?: boolean;
}

/** What the picture needs. */
export interface DurationInput {
  /** one curve a case */
  readonly curves: readonly DurationSeries[];
  /** words at the axis, with unit */
  readonly axis: string;
  /** kind of lib/units/kinds.ts */
  readonly kind: Kind;
  /** limits drawn as thin lines and counted in the table */
  readonly limits: readonly number[];
  /** hours of a second picture of the cold end; none unless given */
  readonly coldEnd?: number;
  /** lines drawn and named in that picture, such as a crop's limits */
  readonly marked?: readonly MarkedLimit[];
  /** heading of the picture */
  readonly title: string;
  /** the picture in words */
  readonly alt: string;
}

/** A limit with a name. */
export interface MarkedLimit {
  /** in the unit of the curves */
  readonly limit: number;
  /** what happens there */
  readonly name: string;
}

/** Values sorted from the lowest; x is the number of hours at or below. */
export function durationCurve(series: Float64Array): Point[] {
  const sorted = series.toSorted();
  return Array.from(sorted, (y, index) => ({ x: index + 1, y }));
}

/** Draws duration curves with the hours below each limit in the table. */
export function durationFigure(input: DurationInput): DisplayItem {
  const table = dataTable(input.limits, [
    { head: "limit", value: (limit) => limit, kind: input.kind },
    ...input.curves.map((curve) => ({
      head: `hours below, ${curve.label}`,
      value: (_: number, index: number) => curve.hoursBelow[index]!,
      digits: 0,
    })),
  ]);
  const whole = durationPlot(input, 8760, 600);
  const { coldEnd } = input;
  const plots = coldEnd === undefined ? [whole] : [durationPlot(input, coldEnd, 400), whole];
  return figure(plots, {
    title: input.title,
    alt: input.alt,
    table,
    legend: input.curves.map((curve) => ({
      label: curve.label,
      colour: curve.colour,
      sign: curve.dashed === true ? "dash" : "line",
    })),
  });
}

/** The coldest `hours` of the curves; the whole year without the named limits. */
function durationPlot(input: DurationInput, hours: number, points: number): Plot.PlotOptions {
  const whole = hours === 8760;
  const marked = whole ? [] : input.marked ?? [];
  return {
    ...(whole ? {} : { height: 260 }),
    x: {
      label: whole ? "hours of the year at or below, h" : "coldest hours of the year, h",
      domain: [0, hours],
    },
    y: { label: input.axis, grid: true },
    marks: [
      Plot.ruleY(whole ? input.limits : [0], {
        stroke: PALETTE.ink,
        strokeWidth: 0.8,
        strokeDasharray: "2 3",
      }),
      Plot.ruleY(marked, { y: "limit", stroke: PALETTE.latent, strokeWidth: 1.2 }),
      Plot.text(marked, {
        x: hours,
        y: "limit",
        text: "name",
        textAnchor: "end",
        dy: -6,
        fill: PALETTE.ink,
      }),
      ...input.curves.map((curve) =>
        Plot.lineY(thin(durationCurve(curve.series).slice(0, hours), points), {
          x: "x",
          y: "y",
          stroke: curve.colour,
          strokeWidth: 2,
          ...(curve.dashed === true ? { strokeDasharray: "6 4" } : {}),
        })
      ),
    ],
  };
}
