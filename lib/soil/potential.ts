/** Conduction in soil whose conductivity changes as it freezes, made linear. @module */

/** How a soil conducts while its water freezes. */
export interface FreezingCurve {
  /** K below 0 degC over which the water freezes, evenly */
  readonly range: number;
  /** ratio of the frozen to the unfrozen conductivity */
  readonly ratio: number;
}

/**
 * Kirchhoff's potential θ = ∫ λ/λ_u dT from 0 degC: in it the soil conducts with its unfrozen
 * conductivity λ_u at every temperature. While the water freezes λ is taken half-way between
 * unfrozen and frozen.
 *
 * Source: Carslaw & Jaeger 1959 [carslaw-jaeger-1959] §1.6 (transformation; section from memory).
 *
 * @param curve of the soil
 * @param temperature degC
 * @returns K, the temperature itself above 0 degC
 */
export function conductionPotential({ range, ratio }: FreezingCurve, temperature: number): number {
  if (temperature >= 0) return temperature;
  const slope = (1 + ratio) / 2;
  return temperature >= -range
    ? slope * temperature
    : -slope * range + ratio * (temperature + range);
}

/** Temperature, degC, that goes with a potential, K: the inverse of {@link conductionPotential}. */
export function temperatureOfPotential({ range, ratio }: FreezingCurve, potential: number): number {
  if (potential >= 0) return potential;
  const slope = (1 + ratio) / 2;
  const frozen = -slope * range;
  return potential >= frozen ? potential / slope : -range + (potential - frozen) / ratio;
}

/** K by which the potential lies above the temperature that goes with it; 0 where nothing freezes. */
export function potentialLead(curve: FreezingCurve, potential: number): number {
  return potential - temperatureOfPotential(curve, potential);
}
