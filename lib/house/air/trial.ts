/** Trials of an air temperature: the heat balance with its vapour solved, and its root. @module */
import { balanceSlope, heatBalance } from "./balance.ts";
import type { StepTerms } from "./step_terms.ts";
import { solveVapour, type VapourBalance } from "./vapour.ts";

/** Most trials of a root. */
export const TRIALS = 40;
/** K and share of opening to which a trial is solved; the rest goes into the closed balance */
export const CLOSE_ENOUGH = 1e-7;

/** Heat balance at a trial with its vapour solved. */
export function tryAt(
  terms: StepTerms,
  temperature: number,
  opening: number,
  vapour: VapourBalance,
): number {
  solveVapour(terms, temperature, opening, vapour);
  return heatBalance(terms, temperature, opening, vapour);
}

/**
 * Root of a falling function near a guess: secant steps inside a bracket that closes.
 *
 * @param evaluate falling function
 * @param guess start
 * @param slope how fast it falls at least, above 0
 * @param enough width of a step at which to stop
 */
function fallingRoot(
  evaluate: (at: number) => number,
  guess: number,
  slope: number,
  enough: number,
): number {
  let [low, high] = [-Infinity, Infinity];
  let [at, value] = [guess, evaluate(guess)];
  let steep = slope;
  for (let trial = 0; trial < TRIALS; trial++) {
    if (value > 0) low = at;
    else if (value < 0) high = at;
    else return at;
    let next = at + value / steep;
    if (Math.abs(next - at) < enough) return next;
    if (next <= low || next >= high) next = (low + high) / 2;
    const step = next - at;
    const before = value;
    at = next;
    value = evaluate(at);
    steep = Math.max(slope, (before - value) / step);
  }
  return at;
}

/** degC at which the balance closes with vents and heater held: opening 0 to 1, heater in W. */
export function solveTemperature(
  terms: StepTerms,
  opening: number,
  heater: number,
  vapour: VapourBalance,
): number {
  const slope = balanceSlope(terms, opening, terms.start.airTemperature);
  return fallingRoot(
    (temperature) => tryAt(terms, temperature, opening, vapour) + heater,
    terms.start.airTemperature,
    slope,
    CLOSE_ENOUGH,
  );
}
