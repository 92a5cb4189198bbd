/** Which step comes next: the one rule of verdict and ladder. @module */

/** A step that could be taken. */
export interface PossibleStep {
  /** money for a kWh that it saves, levelised; null where it saves none or has no price */
  readonly costOfHeat: number | null;
}

/**
 * Whether a step pays: it saves a kilowatt-hour for less than one from the heater is worth, so that
 * its net savings are above nought.
 *
 * @param step what a kWh saved costs
 * @param heatWorth money that a kWh of heat is worth over the years
 */
export function pays({ costOfHeat }: PossibleStep, heatWorth: number): boolean {
  return costOfHeat !== null && costOfHeat < heatWorth;
}

/**
 * The step to take next: of those that pay, the one with the cheapest kilowatt-hour; the first of
 * equals.
 *
 * @param steps all that could be next
 * @param heatWorth money that a kWh of heat is worth over the years
 * @returns null where none pays
 */
export function nextStep<Step extends PossibleStep>(
  steps: readonly Step[],
  heatWorth: number,
): Step | null {
  let best: Step | null = null;
  for (const step of steps) {
    if (pays(step, heatWorth) && (best === null || step.costOfHeat! < best.costOfHeat!)) {
      best = step;
    }
  }
  return best;
}
