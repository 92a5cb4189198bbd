/** How much of its sky the floor sees through the leaves. @module */

const MOST_LEAVES = 10;
const PER_LEAF = 50;
const RINGS = 400;

/** Share of a grey sky that passes leaves at all angles: 2·∫ exp(−L/(2μ))·μ dμ over μ from 0 to 1. */
function throughLeaves(leafArea: number): number {
  let sum = 0;
  for (let ring = 0; ring < RINGS; ring++) {
    const sine = (ring + 0.5) / RINGS;
    sum += Math.exp(-leafArea / (2 * sine)) * sine;
  }
  return 2 * sum / RINGS;
}

let table: Float64Array | undefined;

/**
 * Share of the hemisphere above the floor that leaves leave open, weighted as a surface sees it.
 * τ = 2·E₃(L/2), E₃ the exponential integral: leaves black to long waves, at all angles (G = 1/2),
 * spread at random over the floor.
 *
 * Source: exact, Beer's law summed over the hemisphere; E₃ Abramowitz & Stegun 1964
 * [abramowitz-stegun-1964] ch. 5. Leaves in clumps and beds leave more open.
 *
 * @param leafArea leaf area over floor area, 0 to 10
 * @returns share, 1 without leaves
 * @example
 * ```ts
 * import { openSky } from "winterground/house/mod.ts";
 * if (Math.abs(openSky(2) - 0.219) > 0.001) throw new Error("formula changed");
 * ```
 */
export function openSky(leafArea: number): number {
  table ??= Float64Array.from(
    { length: MOST_LEAVES * PER_LEAF + 1 },
    (_, i) => throughLeaves(i / PER_LEAF),
  );
  const at = Math.min(table.length - 1.000001, Math.max(0, leafArea * PER_LEAF));
  const low = Math.floor(at);
  return table[low]! + (at - low) * (table[low + 1]! - table[low]!);
}
