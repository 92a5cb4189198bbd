/** How deep waves of temperature reach into the soil. @module */
import { DAY } from "../basics/mod.ts";
import { dampingDepth } from "./wave.ts";

/** Reach of one wave. */
export interface Penetration {
  /** days of one whole wave */
  readonly days: number;
  /** m, depth at which 1/e (37 %) of the swing is left */
  readonly depth: number;
  /** m, depth at which e⁻³ (5 %) is left */
  readonly depthOfTwentieth: number;
}

/** Days of the waves looked at: a day and night, a spell, the seasons. */
const PERIODS = [1, 10, 365];

/**
 * Depths at which 37 % and 5 % are left of waves of a day, of ten days and of a year.
 *
 * @param diffusivity m²/s
 */
export function penetration(diffusivity: number): Penetration[] {
  return PERIODS.map((days) => {
    const depth = dampingDepth(diffusivity, days * DAY);
    return { days, depth, depthOfTwentieth: 3 * depth };
  });
}
