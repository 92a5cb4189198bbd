/** Cholesky of a banded matrix: the slice's conduction matrix, columns of cells one after another. @module */
import type { ConductionOperator } from "../../ground/operator.ts";
import { surfaceConductance } from "../full/factors.ts";

/** A factor L of A = L·Lᵀ by rows: L[i][i−k] at `i·(band+1) + band − k`; reciprocal diagonal kept. */
export interface BandedFactor {
  readonly size: number;
  readonly band: number;
  readonly lower: Float64Array;
  readonly inverseDiagonal: Float64Array;
  /** place of each cell in the factor's order */
  readonly order: Int32Array;
}

/**
 * Factors K + σM of a slice.
 *
 * @param operator slice
 * @param shift σ, 1/s
 */
export function factorShifted(operator: ConductionOperator, shift: number): BandedFactor {
  const { columns, rows, capacity, sideways, downwards } = operator;
  const size = columns * rows;
  const band = Math.min(rows, columns);
  const byColumn = rows <= columns;
  const order = Int32Array.from(
    { length: size },
    (_, c) => byColumn ? (c % columns) * rows + Math.floor(c / columns) : c,
  );
  const width = band + 1;
  const lower = new Float64Array(size * width);
  const surface = surfaceConductance(operator);
  for (let c = 0; c < size; c++) {
    lower[order[c]! * width + band]! += surface[c]! + shift * capacity[c]!;
  }
  const join = (c: number, d: number, conductance: number) => {
    if (conductance === 0) return;
    const i = Math.max(order[c]!, order[d]!);
    const j = Math.min(order[c]!, order[d]!);
    lower[order[c]! * width + band]! += conductance;
    lower[order[d]! * width + band]! += conductance;
    lower[i * width + band - (i - j)]! -= conductance;
  };
  for (let c = 0; c < size; c++) {
    if (c % columns < columns - 1) join(c, c + 1, sideways[c]!);
    if (c + columns < size) join(c, c + columns, downwards[c]!);
  }
  const inverseDiagonal = new Float64Array(size);
  for (let i = 0; i < size; i++) {
    const row = i * width + band - i;
    const first = Math.max(0, i - band);
    for (let j = first; j <= i; j++) {
      const other = j * width + band - j;
      let sum = lower[row + j]!;
      for (let k = Math.max(first, j - band); k < j; k++) {
        sum -= lower[row + k]! * lower[other + k]!;
      }
      if (j < i) lower[row + j] = sum * inverseDiagonal[j]!;
      else {
        lower[row + i] = Math.sqrt(sum);
        inverseDiagonal[i] = 1 / lower[row + i]!;
      }
    }
  }
  return { size, band, lower, inverseDiagonal, order };
}

/** Solves A·x = right for one right-hand side by cell. */
export function solveBanded(factor: BandedFactor, right: Float64Array): Float64Array {
  const { size, band, lower, inverseDiagonal, order } = factor;
  const width = band + 1;
  const work = new Float64Array(size);
  right.forEach((value, c) => work[order[c]!] = value);
  for (let i = 0; i < size; i++) {
    const row = i * width + band - i;
    let sum = work[i]!;
    for (let k = Math.max(0, i - band); k < i; k++) sum -= lower[row + k]! * work[k]!;
    work[i] = sum * inverseDiagonal[i]!;
  }
  for (let i = size - 1; i >= 0; i--) {
    const row = i * width + band - i;
    const value = work[i]! * inverseDiagonal[i]!;
    work[i] = value;
    for (let k = Math.max(0, i - band); k < i; k++) work[k]! -= lower[row + k]! * value;
  }
  return right.map((_, c) => work[order[c]!]!);
}
