/** Lone readings far from those before and after. @module */
import { quantile } from "../numbers.ts";

/** Readings from one place up to, not including, another. */
export interface Span {
  /** place of the first, from 0 */
  readonly from: number;
  /** place after the last */
  readonly to: number;
}

/** A spike stands so many times over the usual lone peaks of its channel. */
const OVER_USUAL = 4;

/**
 * Spikes of one or two readings. The height of a lone peak is what it stands over (or under) both
 * its fellows; a spike is higher than the least height of its quantity and than four times the
 * height that all but one in fifty peaks of this channel stay under. A step up or down is none.
 *
 * @param values readings, NaN where there is none
 * @param least height from which on a peak may be a spike, in the unit of the values
 */
export function findSpikes(values: Float64Array, least: number): Span[] {
  const places: number[] = [];
  for (let i = 0; i < values.length; i++) if (!Number.isNaN(values[i]!)) places.push(i);
  if (places.length < 5) return [];
  const at = (k: number) => values[places[k]!]!;
  const heights = new Float64Array(places.length);
  for (let k = 1; k < places.length - 1; k++) {
    heights[k] = peak(at(k) - at(k - 1), at(k) - at(k + 1));
  }
  const usual = quantile(heights, 0.98);
  const limit = Math.max(least, OVER_USUAL * usual);
  const found: Span[] = [];
  for (let k = 1; k < places.length - 1; k++) {
    const one = heights[k]! > limit && Math.abs(at(k + 1) - at(k - 1)) < heights[k]!;
    if (one) {
      found.push({ from: places[k]!, to: places[k]! + 1 });
      continue;
    }
    if (k > places.length - 3) continue;
    const pair = Math.min(
      peak(at(k) - at(k - 1), at(k) - at(k + 2)),
      peak(at(k + 1) - at(k - 1), at(k + 1) - at(k + 2)),
    );
    const lone = pair > limit && Math.abs(at(k + 2) - at(k - 1)) < pair;
    if (lone && places[k + 1] === places[k]! + 1) {
      found.push({ from: places[k]!, to: places[k]! + 2 });
      k++;
    }
  }
  return found;
}

/** How far a reading stands over, or under, both its fellows; 0 where it lies between. */
function peak(overBefore: number, overAfter: number): number {
  if (overBefore * overAfter <= 0) return 0;
  return Math.min(Math.abs(overBefore), Math.abs(overAfter));
}
