/** Leakage: the air that finds its own way through the skin. @module */

/** K between house and outside at which `leakage` holds in calm air. */
const LEAKAGE_DIFFERENCE = 20;

/**
 * Air changes by leakage: stack and wind added.
 * n = n_calm·√(|ΔT|/20 K) + n_wind·v.
 *
 * Source: stack flow goes with the square root of the temperature difference (ASHRAE Fundamentals
 * 2017 [ashrae-2017] ch. 16); the sum of the two parts is the trade's linear rule (common practice,
 * no source).
 *
 * @param inputs leakage figures of the house
 * @param difference K between house and outside
 * @param wind m/s
 * @returns 1/h
 */
export function leakageRate(
  inputs: { readonly leakage: number; readonly leakageWind: number },
  difference: number,
  wind: number,
): number {
  return inputs.leakage * Math.sqrt(Math.abs(difference) / LEAKAGE_DIFFERENCE) +
    inputs.leakageWind * wind;
}
