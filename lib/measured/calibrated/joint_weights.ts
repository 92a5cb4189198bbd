/** Weights of the days that the store's model is held to. @module */
import { CholeskyDecomposition, Matrix } from "ml-matrix";
import { HEAT_READINGS } from "../flows/readings.ts";
import type { DayData, DayKind, DayMisses } from "./joint_days.ts";

/** Puts residuals on a scale on which no lasting error ties them and all are of one size. */
export type Whiten = (values: DayMisses) => number[];

/**
 * The scale of generalised least squares: a probe that is off moves all its days together, and does not
 * average out.
 *
 * @param data days of the log
 * @param scattered residuals that show how much the days of each kind scatter
 */
export function whitener(
  { kinds }: DayData,
  scattered: DayMisses,
): Whiten {
  const sizes = scattered.map((kind) => {
    const middle = kind.reduce((sum, one) => sum + one, 0) / kind.length;
    const off = kind.map((one) => one - middle);
    const variance = off.reduce((sum, one) => sum + one * one, 0) / (kind.length - 1);
    return Math.sqrt(variance);
  });
  const counts = scattered.map(({ length }) => length);
  const total = counts.reduce((sum, one) => sum + one, 0);
  const firsts = counts.map((_, k) => counts.slice(0, k).reduce((sum, one) => sum + one, 0));
  const covariance = Matrix.eye(total, total);
  const columns = lastingColumns(kinds, sizes, firsts, total);
  for (const column of columns) {
    for (let a = 0; a < total; a++) {
      if (column[a] === 0) continue;
      for (let b = 0; b < total; b++) {
        covariance.set(a, b, covariance.get(a, b) + column[a]! * column[b]!);
      }
    }
  }
  const lower = new CholeskyDecomposition(covariance).lowerTriangularMatrix;
  return (values) => {
    const scaled = values.flatMap((kind, k) => kind.map((one) => one / sizes[k]!));
    return forward(lower, scaled);
  };
}

/** Solves a lower triangle from the top. */
function forward(lower: Matrix, right: readonly number[]): number[] {
  const solved: number[] = [];
  right.forEach((value, i) => {
    const row = lower.getRow(i);
    const known = solved.reduce((sum, one, j) => sum + row[j]! * one, 0);
    solved.push((value - known) / row[i]!);
  });
  return solved;
}

/** One column for each lasting error: those of the heat move both directions at once. */
function lastingColumns(
  kinds: readonly DayKind[],
  sizes: readonly number[],
  firsts: readonly number[],
  total: number,
): Float64Array[] {
  const columns: Float64Array[] = [];
  const heat = HEAT_READINGS.map(() => new Float64Array(total));
  kinds.forEach(({ lasting }, k) => {
    const own = lasting.length === HEAT_READINGS.length
      ? heat
      : lasting.map(() => new Float64Array(total));
    lasting.forEach((days, error) =>
      days.forEach((one, day) => own[error]![firsts[k]! + day]! += one / sizes[k]!)
    );
    if (own !== heat) columns.push(...own);
  });
  return [...columns, ...heat];
}
