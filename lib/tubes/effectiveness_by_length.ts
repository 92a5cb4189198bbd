/** What one more metre of tube gives in effectiveness, and what it costs in pressure. @module */
import type { TubesResult } from "./types.ts";

/** One length of tube: what it gives and what it costs in pressure. */
export interface TubeLengthRow {
  /** m */
  readonly length: number;
  /** 0 to 1 */
  readonly effectiveness: number;
  /** 1/m, effectiveness gained by one more metre */
  readonly gainPerMetre: number;
  /** Pa */
  readonly pressureDrop: number;
}

/**
 * Effectiveness 1 − exp(−NTU·x/L) and pressure for lengths up to twice the study's, at the same
 * flow in each tube.
 *
 * @param tubes one tube at its design flow
 * @param steps number of rows less one; row `steps`/2 is the tube itself
 */
export function effectivenessByLength(
  tubes: Pick<
    TubesResult,
    "transferUnits" | "length" | "pressureDrop" | "lossCoefficient" | "frictionFactor" | "diameter"
  >,
  steps = 40,
): TubeLengthRow[] {
  const unitsPerMetre = tubes.transferUnits / tubes.length;
  const head = tubes.pressureDrop / tubes.lossCoefficient;
  const frictionPerMetre = tubes.frictionFactor / tubes.diameter;
  return Array.from({ length: steps + 1 }, (_, index) => {
    const length = 2 * tubes.length * index / steps;
    const rest = Math.exp(-unitsPerMetre * length);
    return {
      length,
      effectiveness: 1 - rest,
      gainPerMetre: unitsPerMetre * rest,
      pressureDrop: head *
        (tubes.lossCoefficient + frictionPerMetre * (length - tubes.length)),
    };
  });
}
