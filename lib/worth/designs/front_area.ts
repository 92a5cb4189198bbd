/** How much a design would add to what is had for every sum of money. @module */
import type { PricedGain } from "./unbeaten.ts";
import { unbeaten } from "./unbeaten.ts";

/**
 * Area that a design adds under the stairs of the unbeaten ones: over all sums of money from its own
 * cost on, how much more it gives than the best of the others that cost no more. Nought for one that
 * is beaten.
 *
 * @param front designs so far, of one currency
 * @param most money up to which sums count
 */
export function addedArea(
  front: readonly PricedGain[],
  most: number,
): (design: PricedGain) => number {
  const kept = unbeaten(front);
  const stairs = front.filter((_, k) => kept[k]).sort((a, b) => a.cost - b.cost);
  return ({ cost, gain }) => {
    let area = 0;
    let from = cost;
    let had = 0;
    for (const stair of stairs) {
      if (stair.cost > from) {
        area += Math.max(0, Math.min(stair.cost, most) - from) * Math.max(0, gain - had);
        from = stair.cost;
      }
      had = Math.max(had, stair.gain);
      if (had >= gain) return area;
    }
    return area + Math.max(0, most - from) * Math.max(0, gain - had);
  };
}
