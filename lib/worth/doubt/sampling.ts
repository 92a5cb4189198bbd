/**
 * Points at which a model is tried when its inputs are not known exactly.
 *
 * @module
 */
import { uniformFloat64 } from "pure-rand/distribution/uniformFloat64";
import { xoroshiro128plus } from "pure-rand/generator/xoroshiro128plus";
import { requireInRange } from "../../basics/mod.ts";

/** How an input is spread. */
export type InputRange =
  | { readonly shape: "uniform"; readonly low: number; readonly high: number }
  | {
    readonly shape: "triangle";
    readonly low: number;
    readonly mode: number;
    readonly high: number;
  };

/**
 * Latin hypercube: in each column every one of `count` equal slices of 0 to 1 is hit once.
 *
 * Source: McKay, Beckman & Conover 1979 [mckay-1979], from memory.
 *
 * @param count number of points
 * @param columns number of inputs
 * @param seed whole number; the same seed gives the same points
 * @returns rows of shares, 0 to 1
 */
export function latinHypercube(count: number, columns: number, seed: number): number[][] {
  requireInRange("number of points", count, 1, 1e7, "points");
  const source = xoroshiro128plus(seed);
  const draw = () => uniformFloat64(source);
  const points = Array.from({ length: count }, () => new Array<number>(columns).fill(0));
  for (let column = 0; column < columns; column++) {
    const slices = shuffled(count, draw);
    slices.forEach((slice, row) => points[row]![column] = (slice + draw()) / count);
  }
  return points;
}

/** 0 to count − 1 in an order by chance (Fisher & Yates). */
function shuffled(count: number, draw: () => number): number[] {
  const order = Array.from({ length: count }, (_, place) => place);
  for (let last = count - 1; last > 0; last--) {
    const other = Math.floor(draw() * (last + 1));
    [order[last], order[other]] = [order[other]!, order[last]!];
  }
  return order;
}

/**
 * Value of an input that a share of all values stays below.
 *
 * @param range how the input is spread, in any unit
 * @param share 0 to 1
 * @returns in the same unit
 */
export function valueAt(range: InputRange, share: number): number {
  const { low, high } = range;
  const width = high - low;
  if (range.shape === "uniform" || width === 0) return low + share * width;
  const turn = (range.mode - low) / width;
  return share < turn
    ? low + width * Math.sqrt(share * turn)
    : high - width * Math.sqrt((1 - share) * (1 - turn));
}
