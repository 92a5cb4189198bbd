/** Trials of an air temperature: the heat balance with its vapour solved, and its root. @module */
import { balanceSlope, heatBalance } from "./balance.ts";
import type { StepTerms } from "./step_terms.ts";
import { solveVapour, type VapourBalance } from "./vapour.ts";

/** Most trials of a root. */
const TRIALS = 40;

/** How a step's roots are sought; what one has found helps the next. */
export interface Search {
  /** degC near which the air will be */
  temperature: number;
  /** ratio: how much steeper the balance falls than with vapour held, 1 or more */
  steeper: number;
  /** K to which a root is found; the rest goes into the closed balance */
  enough: number;
}

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

/** Where the root of a falling function is sought. */
export interface RootGuess {
  readonly at: number;
  /** how fast the function falls near it */
  readonly steep: number;
  /** how fast it falls at least, above 0 */
  readonly slope: number;
  /** the root lies above and below */
  readonly low: number;
  readonly high: number;
  /** width of a step at which to stop */
  readonly enough: number;
}

/** A root and how fast the function fell on the way to it. */
export interface FoundRoot {
  readonly at: number;
  readonly steep: number;
}

/** Root of a falling function near a guess: secant steps inside a bracket that closes. */
export function fallingRoot(evaluate: (at: number) => number, guess: RootGuess): FoundRoot {
  const { slope, enough } = guess;
  let { at, steep, low, high } = guess;
  let value = evaluate(at);
  for (let trial = 0; trial < TRIALS; trial++) {
    if (value > 0) low = at;
    else if (value < 0) high = at;
    else return { at, steep };
    let next = at + value / steep;
    if (Math.abs(next - at) < enough) return { at: next, steep };
    if (next <= low || next >= high) next = (low + high) / 2;
    const step = next - at;
    const before = value;
    at = next;
    value = evaluate(at);
    steep = Math.max(slope, (before - value) / step);
  }
  return { at, steep };
}

/**
 * degC at which the balance closes with vents and heater held: opening 0 to 1, heater in W. The vapour
 * is that of the last trial, which lies as near as the search asks.
 */
export function solveTemperature(
  terms: StepTerms,
  opening: number,
  heater: number,
  vapour: VapourBalance,
  search: Search,
): number {
  const slope = balanceSlope(terms, opening, terms.start.airTemperature);
  const { at, steep } = fallingRoot(
    (temperature) => tryAt(terms, temperature, opening, vapour) + heater,
    {
      at: search.temperature,
      steep: slope * search.steeper,
      slope,
      low: -Infinity,
      high: Infinity,
      enough: search.enough,
    },
  );
  search.temperature = at;
  search.steeper = steep / slope;
  return at;
}
