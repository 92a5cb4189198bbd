/** Means over a step of the house and where it ends. @module */
import { balanceSlope } from "./balance.ts";
import { endWeight } from "./end_weight.ts";
import type { StepTerms } from "./step_terms.ts";
import { solveVapour, type VapourBalance } from "./vapour.ts";

/** degC of the air at the end of a step with a mean. */
export function endTemperature(terms: StepTerms, mean: number): number {
  const { airTemperature } = terms.start;
  return airTemperature + (mean - airTemperature) / terms.airWeight;
}

/** Mean of the air over a step with an end, degC. */
export function meanTemperature(terms: StepTerms, end: number): number {
  const { airTemperature } = terms.start;
  return airTemperature + (end - airTemperature) * terms.airWeight;
}

/** kg/kg at the end of a step with a mean. */
export function endRatio(terms: StepTerms, mean: number): number {
  const { humidityRatio } = terms.start;
  return humidityRatio + (mean - humidityRatio) / terms.vapourWeight;
}

/** Sets the weights of the end of the step for air and vapour, and the storage that goes with them. */
export function setWeights(terms: StepTerms, air: number, vapour: number): void {
  terms.airStore *= terms.airWeight / air;
  terms.airWeight = air;
  terms.vapourStore *= terms.vapourWeight / vapour;
  terms.vapourWeight = vapour;
}

/**
 * Fits the weights of the step to how fast air and vapour near their equilibrium with the vents at
 * an opening.
 */
export function fitWeights(terms: StepTerms, opening: number, vapour: VapourBalance): void {
  const { airTemperature } = terms.start;
  solveVapour(terms, airTemperature, opening, vapour);
  const store = terms.airStore * terms.airWeight;
  const slope = balanceSlope(terms, opening, airTemperature) - terms.airStore;
  const held = terms.vapourStore * terms.vapourWeight;
  setWeights(terms, endWeight(slope / store), endWeight(vapour.slope / held));
}
