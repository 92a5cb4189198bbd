/** Heat in barrels and masonry; the water freezes between 0 and -1 degC. @module */

/** K below 0 degC over which barrels freeze through, from the wall inward (common practice, no source). */
export const MASS_FREEZING_RANGE = 1;

/** Heat per kelvin of the mass in its three ranges; any one unit, such as J/K or W/K of a step. */
export interface MassStore {
  /** above 0 degC */
  readonly thawed: number;
  /** while freezing, latent heat spread over the range */
  readonly freezing: number;
  /** below the freezing range */
  readonly frozen: number;
}

/** A mass and what acts on it. */
export interface MassMoment {
  readonly store: MassStore;
  /** the same unit: coupling to the air */
  readonly conductance: number;
}

/**
 * Heat content above liquid water at 0 degC.
 *
 * @param store heat per kelvin
 * @param temperature degC
 */
export function massContent(store: MassStore, temperature: number): number {
  if (temperature >= 0) return store.thawed * temperature;
  if (temperature >= -MASS_FREEZING_RANGE) return store.freezing * temperature;
  return -store.freezing * MASS_FREEZING_RANGE +
    store.frozen * (temperature + MASS_FREEZING_RANGE);
}

/**
 * Temperature at which content + conductance·temperature reaches a total: the implicit step of the
 * mass.
 *
 * @param moment store and conductance
 * @param total content at the start, plus sun, plus conductance times air temperature
 * @returns degC
 */
export function massTemperature(moment: MassMoment, total: number): number {
  const { store, conductance } = moment;
  if (total >= 0) return total / (store.thawed + conductance);
  const whole = -(store.freezing + conductance) * MASS_FREEZING_RANGE;
  if (total >= whole) return total / (store.freezing + conductance);
  return (total - whole) / (store.frozen + conductance) - MASS_FREEZING_RANGE;
}

/** Heat per kelvin of the range a temperature lies in. */
export function massStoreAt(store: MassStore, temperature: number): number {
  if (temperature >= 0) return store.thawed;
  return temperature >= -MASS_FREEZING_RANGE ? store.freezing : store.frozen;
}
