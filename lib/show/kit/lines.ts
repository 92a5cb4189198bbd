/** Several hourly series over time in one plot. @module */
import * as Plot from "@observablehq/plot";
import { axisDate, monthTicks } from "./calendar.ts";
import type { LegendEntry } from "./picture.ts";
import { PALETTE } from "./palette.ts";
import { hourlyPoints, type Point, thin } from "./thin.ts";

/** One line over time. */
export interface TimeLine {
  /** name shown */
  readonly label: string;
  /** colour of the line or key */
  readonly colour: string;
  /** one value an hour; the first belongs to `start` */
  readonly series: ArrayLike<number>;
  /** drawn dashed */
  readonly dashed?: boolean;
  /** line width, px */
  readonly width?: number;
}

/** What the plot needs. */
export interface TimePlot {
  /** lines drawn */
  readonly lines: readonly TimeLine[];
  /** hour of the year of the first value shown */
  readonly start: number;
  /** hours shown */
  readonly hours: number;
  /** words at the axis, with unit */
  readonly axis: string;
  /** height of the picture, px */
  readonly height?: number;
  /** values drawn as thin lines across */
  readonly limits?: readonly number[];
}

/** Lines over time, thinned, with a light grid. */
export function timePlot(input: TimePlot): Plot.PlotOptions {
  return {
    height: input.height ?? 280,
    x: { type: "utc", label: null, grid: true, ...yearTicks(input) },
    y: { label: input.axis, grid: true },
    marks: [
      Plot.ruleY(input.limits ?? [], { stroke: PALETTE.ink, strokeWidth: 1 }),
      ...input.lines.map((line) => lineMark(line, input)),
    ],
  };
}

/** Month names for a whole year; Plot's own days for less. */
function yearTicks(input: TimePlot): Plot.ScaleOptions {
  return input.hours < 8000 ? {} : { ticks: monthTicks(), tickFormat: "%b" };
}

function lineMark(line: TimeLine, input: TimePlot): Plot.Markish {
  const points = thin(hourlyPoints(yearWindow(line.series, input.start, input.hours)), 1200);
  return Plot.lineY(points, {
    x: (point: Point) => axisDate(input.start + point.x),
    y: "y",
    stroke: line.colour,
    strokeWidth: line.width ?? 1.8,
    ...(line.dashed === true ? { strokeDasharray: "5 3" } : {}),
  });
}

/** Hours of a year from `start` on, running over New Year where needed. */
export function yearWindow(series: ArrayLike<number>, start: number, hours: number): Float64Array {
  const length = series.length;
  const first = ((start % length) + length) % length;
  return Float64Array.from({ length: hours }, (_, index) => series[(first + index) % length]!);
}

/** Legend of lines. */
export function lineLegend(lines: readonly TimeLine[]): LegendEntry[] {
  return lines.map((line) => ({
    label: line.label,
    colour: line.colour,
    sign: line.dashed === true ? "dash" : "line",
  }));
}
