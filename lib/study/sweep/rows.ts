/** Rows of a sweep: which values each takes. @module */
import { formatQuantity } from "../../units/mod.ts";
import { latinHypercube, sobolPoints } from "../../worth/mod.ts";
import type { Axis, RowValues, Shard, SweepPlan, SweptValue } from "./types.ts";

/** Digits to which values of a range are written into a study. */
const DIGITS = 12;

type RangeAxis = Extract<Axis, { readonly form: "range" }>;

function inRange({ low, high, kind, whole }: RangeAxis, share: number): SweptValue {
  if (!whole) return formatQuantity(low + (high - low) * share, kind, "SI", DIGITS);
  // each whole number has an equal part of the samples
  const count = Math.floor(high) - Math.ceil(low) + 1;
  const step = Math.min(count - 1, Math.floor(share * count));
  return formatQuantity(Math.ceil(low) + step, kind, "SI", DIGITS);
}

/** Count of values of an axis; one for a range without steps. */
export function axisLength(axis: Axis): number {
  return axis.form === "list" ? axis.values.length : axis.steps ?? 1;
}

function stepOf(axis: Axis, step: number): SweptValue {
  if (axis.form === "list") return axis.values[step]!;
  const steps = axis.steps ?? 1;
  const value = steps === 1 ? axis.low : axis.low + (axis.high - axis.low) * step / (steps - 1);
  return formatQuantity(value, axis.kind, "SI", DIGITS);
}

function shareOf(axis: Axis, share: number): SweptValue {
  if (axis.form === "range") return inRange(axis, share);
  return axis.values[Math.min(axis.values.length - 1, Math.floor(share * axis.values.length))]!;
}

/**
 * The points of a sweep of the form sample: rows of shares, 0 to 1, one for each key.
 *
 * @param plan checked sweep file
 */
export function samplePoints({ rows, keys, points, seed }: SweepPlan): readonly number[][] {
  return points === "sobol"
    ? sobolPoints(rows, keys.length, seed)
    : latinHypercube(rows, keys.length, seed);
}

/**
 * The values of any row of a sweep. In a grid the last key changes from row to row.
 *
 * @param plan checked sweep file
 * @returns gives the values of a row; rows count from 1
 */
export function rowValues(plan: SweepPlan): (row: number) => RowValues {
  const axes = plan.keys.map(({ axis }) => axis);
  if (plan.form === "zip") return (row) => axes.map((axis) => stepOf(axis, row - 1));
  if (plan.form === "grid") return (row) => gridValues(axes, row - 1);
  const points = samplePoints(plan);
  return (row) => axes.map((axis, column) => shareOf(axis, points[row - 1]![column]!));
}

function gridValues(axes: readonly Axis[], place: number): RowValues {
  const values: SweptValue[] = [];
  let rest = place;
  for (const axis of axes.toReversed()) {
    const length = axisLength(axis);
    values.unshift(stepOf(axis, rest % length));
    rest = Math.floor(rest / length);
  }
  return values;
}

/** Row numbers of a shard, from 1, in order. */
export function shardRows(rows: number, { index, count }: Shard): number[] {
  const own = Math.max(0, Math.ceil((rows - index + 1) / count));
  return Array.from({ length: own }, (_, place) => index + place * count);
}
