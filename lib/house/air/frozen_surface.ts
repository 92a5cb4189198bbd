/** Heat of vapour that leaves a surface, water or ice. @module */
import { HEAT_OF_SUBLIMATION, HEAT_OF_VAPORISATION } from "../../air/mod.ts";

/** K below 0 degC over which the water at the surface freezes; common practice, no source. */
const FREEZING_RANGE = 0.5;

/**
 * Heat that a kilogram of vapour takes from the floor: from water above 0 degC, from ice below
 * -0.5 degC, in proportion between.
 *
 * @param surface degC of the floor's surface
 * @returns J/kg
 */
export function heatPerVapour(surface: number): number {
  const ice = Math.min(1, Math.max(0, -surface / FREEZING_RANGE));
  return HEAT_OF_VAPORISATION + ice * (HEAT_OF_SUBLIMATION - HEAT_OF_VAPORISATION);
}
