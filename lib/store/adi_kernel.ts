/**
 * The alternating-direction step for four slices at once. Every coefficient is loaded once for
 * four slices and the sums stay in registers; that is why the body is written out by hand.
 *
 * @module
 */
import type { AdiFactors } from "./adi_factors.ts";
import type { ConductionOperator } from "./operator.ts";

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
  const { columns, rows, sideways, downwards } = operator;
  const { mass, surface, rowPivot, rowNext, columnPivot, columnNext } = factors;
  const stride = LANES * columns;
  for (let row = 0; row < rows; row++) {
    const first = row * columns;
    let p0 = 0, p1 = 0, p2 = 0, p3 = 0;
    let left = 0;
    const hasUp = row > 0;
    const hasDown = row + 1 < rows;
    for (let column = 0; column < columns; column++) {
      const c = first + column;
      const f = start + LANES * c;
      const w = LANES * c;
      const up = hasUp ? downwards[c - columns]! : 0;
      const down = downwards[c]!;
      const own = mass[c]! - up - down - surface[c]!;
      const u = hasUp ? f - stride : f;
      const d = hasDown ? f + stride : f;
      const pivot = rowPivot[c]!;
      p0 = (own * field[f]! + up * field[u]! + down * field[d]! + left * p0) * pivot;
      p1 = (own * field[f + 1]! + up * field[u + 1]! + down * field[d + 1]! + left * p1) * pivot;
      p2 = (own * field[f + 2]! + up * field[u + 2]! + down * field[d + 2]! + left * p2) * pivot;
      p3 = (own * field[f + 3]! + up * field[u + 3]! + down * field[d + 3]! + left * p3) * pivot;
      work[w] = p0;
      work[w + 1] = p1;
      work[w + 2] = p2;
      work[w + 3] = p3;
      left = sideways[c]!;
    }
    for (let column = columns - 2; column >= 0; column--) {
      const c = first + column;
      const w = LANES * c;
      const next = rowNext[c]!;
      p0 = work[w]! + next * p0;
      p1 = work[w + 1]! + next * p1;
      p2 = work[w + 2]! + next * p2;
      p3 = work[w + 3]! + next * p3;
      work[w] = p0;
      work[w + 1] = p1;
      work[w + 2] = p2;
      work[w + 3] = p3;
    }
  }
  for (let row = 0; row < rows; row++) {
    const first = row * columns;
    const hasUp = row > 0;
    let left = 0;
    for (let column = 0; column < columns; column++) {
      const c = first + column;
      const f = start + LANES * c;
      const w = LANES * c;
      const right = sideways[c]!;
      const own = mass[c]! - left - right;
      const before = column > 0 ? w - LANES : w;
      const after = column + 1 < columns ? w + LANES : w;
      const up = hasUp ? downwards[c - columns]! : 0;
      const u = hasUp ? f - stride : f;
      const pivot = columnPivot[c]!;
      field[f] = (own * work[w]! + left * work[before]! + right * work[after]! +
        up * field[u]!) * pivot;
      field[f + 1] = (own * work[w + 1]! + left * work[before + 1]! + right * work[after + 1]! +
        up * field[u + 1]!) * pivot;
      field[f + 2] = (own * work[w + 2]! + left * work[before + 2]! + right * work[after + 2]! +
        up * field[u + 2]!) * pivot;
      field[f + 3] = (own * work[w + 3]! + left * work[before + 3]! + right * work[after + 3]! +
        up * field[u + 3]!) * pivot;
      left = right;
    }
  }
  for (let row = rows - 2; row >= 0; row--) {
    const first = row * columns;
    for (let column = 0; column < columns; column++) {
      const c = first + column;
      const f = start + LANES * c;
      const d = f + stride;
      const next = columnNext[c]!;
      field[f]! += next * field[d]!;
      field[f + 1]! += next * field[d + 1]!;
      field[f + 2]! += next * field[d + 2]!;
      field[f + 3]! += next * field[d + 3]!;
    }
  }
}
