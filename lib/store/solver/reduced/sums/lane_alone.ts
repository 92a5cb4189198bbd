/**
 * The sums of the reduced step for a block that holds a single lane, as that of a house whose fan is
 * always off. Rows stand in for lanes: several go together, so that no sum waits for its last term.
 * Each sum has its terms in the order of those of four lanes, so the answers agree to the bit.
 *
 * @module
 */
import { BLOCK, type Rows, type Run, type StateMove } from "./layout.ts";

/** One row over a run, in the place of the block's first lane. */
function addOne(
  matrix: Float64Array,
  row: number,
  run: Run,
  vector: Float64Array,
  start: number,
  sum: number,
): number {
  let at = start + run.from * BLOCK;
  for (let q = run.from; q < run.to; q++) {
    sum += matrix[row + q]! * vector[at]!;
    at += BLOCK;
  }
  for (let i = 0; i < run.count; i++) {
    const q = run.listed[i]!;
    sum += matrix[row + q]! * vector[start + q * BLOCK]!;
  }
  return sum;
}

/** out[i] ← out[i] + Σ matrix[rows[i]][q]·vector[q] of the block's first lane, four rows at a time. */
export function addAlone(
  { matrix, listed: rows, count }: Rows,
  run: Run,
  vector: Float64Array,
  start: number,
  out: Float64Array,
  outStart: number,
): void {
  const { width, from, to, listed, count: more } = run;
  const fours = count - count % 4;
  for (let i = 0; i < fours; i += 4) {
    const first = rows[i]! * width;
    const second = rows[i + 1]! * width;
    const third = rows[i + 2]! * width;
    const fourth = rows[i + 3]! * width;
    const at = outStart + i * BLOCK;
    let a = out[at]!, b = out[at + BLOCK]!, c = out[at + 2 * BLOCK]!, d = out[at + 3 * BLOCK]!;
    let known = start + from * BLOCK;
    for (let q = from; q < to; q++) {
      const u = vector[known]!;
      a += matrix[first + q]! * u;
      b += matrix[second + q]! * u;
      c += matrix[third + q]! * u;
      d += matrix[fourth + q]! * u;
      known += BLOCK;
    }
    for (let k = 0; k < more; k++) {
      const q = listed[k]!;
      const u = vector[start + q * BLOCK]!;
      a += matrix[first + q]! * u;
      b += matrix[second + q]! * u;
      c += matrix[third + q]! * u;
      d += matrix[fourth + q]! * u;
    }
    out[at] = a;
    out[at + BLOCK] = b;
    out[at + 2 * BLOCK] = c;
    out[at + 3 * BLOCK] = d;
  }
  for (let i = fours; i < count; i++) {
    const at = outStart + i * BLOCK;
    out[at] = addOne(matrix, rows[i]! * width, run, vector, start, out[at]!);
  }
}

/** x[k] ← decay[k]·x[k] + growth[k]·added[k] of the block's first lane. */
export function advanceAlone(
  { decay, growth }: StateMove,
  added: Float64Array,
  x: Float64Array,
  start: number,
): void {
  for (let k = 0; k < decay.length; k++) {
    const at = start + k * BLOCK;
    x[at] = decay[k]! * x[at]! + growth[k]! * added[k * BLOCK]!;
  }
}
