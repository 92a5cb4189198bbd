/** The sums of the reduced step over four lanes at once. @module */
import type { Sums } from "./layout.ts";
import { plainSums } from "./plain_sums.ts";
import { simdSums } from "./simd_sums.ts";
export { BLOCK, type Rows, type Run, runOver, type StateMove, type Sums } from "./layout.ts";

/** The quickest sums there are here; all give the same bits. */
export function bestSums(): Sums {
  return simdSums() ?? plainSums();
}
