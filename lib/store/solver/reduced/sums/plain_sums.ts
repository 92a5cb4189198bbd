/**
 * The sums of the reduced step in plain code, for where there is no WebAssembly: each coefficient is
 * loaded once for four lanes.
 *
 * @module
 */
import type { PlacedArrays } from "../../../../basics/mod.ts";
import { addAlone, advanceAlone } from "./lane_alone.ts";
import { BLOCK, type Rows, type Run, type StateMove, type Sums } from "./layout.ts";

function addRows(
  { matrix, listed: rows, count }: Rows,
  run: Run,
  vector: Float64Array,
  start: number,
  out: Float64Array,
  outStart: number,
  lanes: number,
): void {
  if (lanes === 1) {
    return addAlone({ matrix, listed: rows, count }, run, vector, start, out, outStart);
  }
  const { width, from, to, listed, count: more } = run;
  const length = to - from;
  for (let i = 0; i < count; i++) {
    const row = rows[i]! * width;
    const at = outStart + i * BLOCK;
    let a = out[at]!, b = out[at + 1]!, c = out[at + 2]!, d = out[at + 3]!;
    for (let k = 0; k < length + more; k++) {
      const q = k < length ? from + k : listed[k - length]!;
      const known = start + q * BLOCK;
      const weight = matrix[row + q]!;
      a += weight * vector[known]!;
      b += weight * vector[known + 1]!;
      c += weight * vector[known + 2]!;
      d += weight * vector[known + 3]!;
    }
    out[at] = a;
    out[at + 1] = b;
    out[at + 2] = c;
    out[at + 3] = d;
  }
}

function advance(
  { decay, growth }: StateMove,
  added: Float64Array,
  x: Float64Array,
  start: number,
  lanes: number,
): void {
  if (lanes === 1) return advanceAlone({ decay, growth }, added, x, start);
  for (let k = 0; k < decay.length * BLOCK; k++) {
    const state = k >> 2;
    x[start + k] = decay[state]! * x[start + k]! + growth[state]! * added[k]!;
  }
}

/** Sums in plain code, over arrays wherever they are. */
export function plainSums(): Sums {
  return { place: <Wanted extends PlacedArrays>(wanted: Wanted) => wanted, addRows, advance };
}
