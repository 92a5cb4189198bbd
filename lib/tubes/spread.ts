/** How far film and friction of a tube may lie from what is published. @module */
import type { TubesResult } from "./types.ts";

/** Gnielinski 1975 [gnielinski-1976] states about ±10 % for his film coefficient. */
const FILM_SPREAD = 0.1;
/** Manning's n of one make is known to about ±7 %: ±14 % of friction, which goes with its square. */
const FRICTION_SPREAD = 0.14;

/** Low and high end of what one tube does. */
export interface TubeSpread {
  /** 0 to 1, film 10 % lower and higher */
  readonly effectiveness: readonly [number, number];
  /** Pa, friction 14 % lower and higher */
  readonly pressureDrop: readonly [number, number];
}

/**
 * Effectiveness and pressure of one tube at both ends of the published spread of film and friction.
 *
 * @param tubes one tube at its design flow
 */
export function tubeSpread(
  tubes: Pick<
    TubesResult,
    "transferUnits" | "length" | "pressureDrop" | "lossCoefficient" | "frictionFactor" | "diameter"
  >,
): TubeSpread {
  const effectiveness = (factor: number) => 1 - Math.exp(-tubes.transferUnits * factor);
  const friction = tubes.frictionFactor * tubes.length / tubes.diameter;
  const pressure = (factor: number) =>
    tubes.pressureDrop * (1 + (factor - 1) * friction / tubes.lossCoefficient);
  return {
    effectiveness: [effectiveness(1 - FILM_SPREAD), effectiveness(1 + FILM_SPREAD)],
    pressureDrop: [pressure(1 - FRICTION_SPREAD), pressure(1 + FRICTION_SPREAD)],
  };
}
