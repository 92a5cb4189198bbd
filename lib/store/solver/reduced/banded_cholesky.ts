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

/** Product of two stretches of one array; four sums at a time. */
function stretchProduct(values: Float64Array, a: number, b: number, count: number): number {
  let s0 = 0, s1 = 0, s2 = 0, s3 = 0;
  const whole = count & ~3;
  for (let k = 0; k < whole; k += 4) {
    s0 += values[a + k]! * values[b + k]!;
    s1 += values[a + k + 1]! * values[b + k + 1]!;
    s2 += values[a + k + 2]! * values[b + k + 2]!;
    s3 += values[a + k + 3]! * values[b + k + 3]!;
  }
  for (let k = whole; k < count; k++) s0 += values[a + k]! * values[b + k]!;
  return s0 + s1 + s2 + s3;
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
      const from = Math.max(first, j - band);
      const sum = lower[row + j]! - stretchProduct(lower, row + from, other + from, j - from);
      if (j < i) lower[row + j] = sum * inverseDiagonal[j]!;
      else {
        lower[row + i] = Math.sqrt(sum);
        inverseDiagonal[i] = 1 / lower[row + i]!;
      }
    }
  }
  return { size, band, lower, inverseDiagonal, order };
}

/** Right-hand sides solved together, so that each entry of the factor is loaded once for four. */
const TOGETHER = 4;

/** Forward, row by row: L·y = right, four at a time, in place. */
function forwards({ size, band, lower, inverseDiagonal }: BandedFactor, work: Float64Array): void {
  for (let i = 0; i < size; i++) {
    const row = i * (band + 1) + band - i;
    const at = TOGETHER * i;
    let a = work[at]!, b = work[at + 1]!, c = work[at + 2]!, d = work[at + 3]!;
    let other = TOGETHER * Math.max(0, i - band);
    for (let k = Math.max(0, i - band); k < i; k++) {
      const entry = lower[row + k]!;
      a -= entry * work[other]!;
      b -= entry * work[other + 1]!;
      c -= entry * work[other + 2]!;
      d -= entry * work[other + 3]!;
      other += TOGETHER;
    }
    const inverse = inverseDiagonal[i]!;
    work[at] = a * inverse;
    work[at + 1] = b * inverse;
    work[at + 2] = c * inverse;
    work[at + 3] = d * inverse;
  }
}

/** Backward: Lᵀ·x = y; a column of L stands `band` apart from row to row. */
function backwards({ size, band, lower, inverseDiagonal }: BandedFactor, work: Float64Array): void {
  for (let i = size - 1; i >= 0; i--) {
    const last = Math.min(size - 1, i + band);
    const at = TOGETHER * i;
    let a = work[at]!, b = work[at + 1]!, c = work[at + 2]!, d = work[at + 3]!;
    let other = at + TOGETHER;
    let place = (i + 1) * (band + 1) + band - 1;
    for (let k = i + 1; k <= last; k++) {
      const entry = lower[place]!;
      a -= entry * work[other]!;
      b -= entry * work[other + 1]!;
      c -= entry * work[other + 2]!;
      d -= entry * work[other + 3]!;
      other += TOGETHER;
      place += band;
    }
    const inverse = inverseDiagonal[i]!;
    work[at] = a * inverse;
    work[at + 1] = b * inverse;
    work[at + 2] = c * inverse;
    work[at + 3] = d * inverse;
  }
}

/**
 * Solves A·x = right for many right-hand sides, each by cell. 4·size·band flops each.
 *
 * @param factor of A
 * @param rights right-hand sides by cell; left as they are
 */
export function solveBandedMany(
  factor: BandedFactor,
  rights: readonly Float64Array[],
): Float64Array[] {
  const { size, order } = factor;
  const work = new Float64Array(TOGETHER * size);
  const solutions: Float64Array[] = [];
  for (let first = 0; first < rights.length; first += TOGETHER) {
    const some = rights.slice(first, first + TOGETHER);
    work.fill(0);
    some.forEach((right, l) => {
      for (let c = 0; c < size; c++) work[TOGETHER * order[c]! + l] = right[c]!;
    });
    forwards(factor, work);
    backwards(factor, work);
    some.forEach((_, l) => {
      const solution = new Float64Array(size);
      for (let c = 0; c < size; c++) solution[c] = work[TOGETHER * order[c]! + l]!;
      solutions.push(solution);
    });
  }
  return solutions;
}

/** Solves A·x = right for one right-hand side by cell. */
export function solveBanded(factor: BandedFactor, right: Float64Array): Float64Array {
  return solveBandedMany(factor, [right])[0]!;
}
