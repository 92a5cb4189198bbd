/**
 * The alternating-direction step for four slices at once. Every coefficient is loaded once for
 * four slices and the sums stay in registers; that is why the bodies are written out by hand. Each
 * row is eliminated, solved and carried down into the column elimination while it is in the first
 * cache; only the last pass, upwards, comes back to it.
 *
 * @module
 */
import type { AdiFactors } from "./factors.ts";
import type { ConductionOperator } from "../../ground/operator.ts";

/** Slices advanced together. */
export const LANES = 4;

/**
 * Advances four slices by one step without sources, in place.
 *
 * @param operator slice
 * @param factors of the step length
 * @param field degC; four values for each cell, starting at `start`
 * @param start index of the first value of these four slices
 * @param work scratch of 4·cells values
 */
export function adiKernel(
  operator: ConductionOperator,
  factors: AdiFactors,
  field: Float64Array,
  start: number,
  work: Float64Array,
): void {
  const { columns, rows } = operator;
  const stride = LANES * columns;
  for (let row = 0; row < rows; row++) {
    const at = row * stride;
    // the right-hand side waits in a row that nobody needs any more or yet
    const last = row + 1 === rows;
    const kept = last ? field : work;
    const keptAt = last ? start + Math.max(0, at - stride) : at + stride;
    const across = { columns, row, rows, at, keptAt };
    eliminateRow(factors.across, across, field, start, work, kept);
    solveRow(factors.along, across, work, kept);
  }
  climb(factors.columnNext, { columns, rows }, field, start, work);
}

/** Where a row stands: its number and first value, and where its right-hand side is kept. */
interface RowPlace {
  readonly columns: number;
  readonly row: number;
  readonly rows: number;
  readonly at: number;
  readonly keptAt: number;
}

/** First half step along a row: right-hand side from the rows above and below, elimination. */
function eliminateRow(
  coefficients: Float64Array,
  place: RowPlace,
  field: Float64Array,
  start: number,
  work: Float64Array,
  kept: Float64Array,
): void {
  const { columns, row, rows, at, keptAt } = place;
  const up = row > 0 ? -LANES * columns : 0;
  const down = row + 1 < rows ? LANES * columns : 0;
  let p0 = 0, p1 = 0, p2 = 0, p3 = 0;
  for (let k = 0; k < LANES * columns; k += LANES) {
    const c = at + k;
    const f = start + c;
    const u = f + up;
    const d = f + down;
    const r = keptAt + k;
    const own = coefficients[c]!;
    const above = coefficients[c + 1]!;
    const below = coefficients[c + 2]!;
    const left = coefficients[c + 3]!;
    const r0 = own * field[f]! + above * field[u]! + below * field[d]!;
    const r1 = own * field[f + 1]! + above * field[u + 1]! + below * field[d + 1]!;
    const r2 = own * field[f + 2]! + above * field[u + 2]! + below * field[d + 2]!;
    const r3 = own * field[f + 3]! + above * field[u + 3]! + below * field[d + 3]!;
    p0 = r0 + left * p0;
    p1 = r1 + left * p1;
    p2 = r2 + left * p2;
    p3 = r3 + left * p3;
    kept[r] = r0;
    kept[r + 1] = r1;
    kept[r + 2] = r2;
    kept[r + 3] = r3;
    work[c] = p0;
    work[c + 1] = p1;
    work[c + 2] = p2;
    work[c + 3] = p3;
  }
}

/** Solves a row from the right and carries it down into the elimination of its columns. */
function solveRow(
  coefficients: Float64Array,
  place: RowPlace,
  work: Float64Array,
  kept: Float64Array,
): void {
  const { columns, row, at, keptAt } = place;
  const up = row > 0 ? -LANES * columns : 0;
  let t0 = 0, t1 = 0, t2 = 0, t3 = 0;
  for (let k = LANES * (columns - 1); k >= 0; k -= LANES) {
    const c = at + k;
    const u = c + up;
    const r = keptAt + k;
    const middle = coefficients[c]!;
    const before = coefficients[c + 1]!;
    const above = coefficients[c + 2]!;
    const next = coefficients[c + 3]!;
    t0 = work[c]! + next * t0;
    t1 = work[c + 1]! + next * t1;
    t2 = work[c + 2]! + next * t2;
    t3 = work[c + 3]! + next * t3;
    work[c] = middle * t0 - before * kept[r]! + above * work[u]!;
    work[c + 1] = middle * t1 - before * kept[r + 1]! + above * work[u + 1]!;
    work[c + 2] = middle * t2 - before * kept[r + 2]! + above * work[u + 2]!;
    work[c + 3] = middle * t3 - before * kept[r + 3]! + above * work[u + 3]!;
  }
}

/** Solves all columns from below; leaves the new temperatures in the field. */
function climb(
  columnNext: Float64Array,
  { columns, rows }: { readonly columns: number; readonly rows: number },
  field: Float64Array,
  start: number,
  work: Float64Array,
): void {
  const stride = LANES * columns;
  const bottom = stride * (rows - 1);
  for (let k = bottom; k < bottom + stride; k++) field[start + k] = work[k]!;
  let cell = columns * (rows - 1) - 1;
  for (let k = bottom - LANES; k >= 0; k -= LANES) {
    const f = start + k;
    const d = f + stride;
    const next = columnNext[cell]!;
    cell--;
    field[f] = work[k]! + next * field[d]!;
    field[f + 1] = work[k + 1]! + next * field[d + 1]!;
    field[f + 2] = work[k + 2]! + next * field[d + 2]!;
    field[f + 3] = work[k + 3]! + next * field[d + 3]!;
  }
}
