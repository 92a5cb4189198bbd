/** How long the next step may be, and when the fan switches within it. @module */
import { decideMode } from "../control.ts";
import type { Attempt } from "./attempt.ts";
import { type IntakeSight, sightBetween, sightOf } from "./sight.ts";
import type { YearWork } from "./year_work.ts";

/** Halvings of a step in search of the moment at which the fan switches. */
const HALVINGS = 5;

/** Time constants in a step beyond which the air is at its end at once, and below which it goes straight. */
const MOST_BEND = 60;
const STRAIGHT = 1e-3;
/** Halvings in search of them. */
const BEND_HALVINGS = 20;

/**
 * Time constants of the house air in a step, a ratio: the x for which the end has the weight
 * 1/(1 − e^(−x)) − 1/x in the mean of an exponential. 0 where the air hardly moves or goes straight.
 *
 * @param start degC as the step begins
 * @param mean degC over the step
 * @param end degC as it ends
 */
export function bendOf(start: number, mean: number, end: number): number {
  if (Math.abs(end - start) < 1e-6) return 0;
  const weight = (mean - start) / (end - start);
  if (weight <= 0.5) return 0;
  let [low, high] = [0, MOST_BEND];
  for (let halving = 0; halving < BEND_HALVINGS; halving++) {
    const middle = (low + high) / 2;
    if (-1 / Math.expm1(-middle) - 1 / middle < weight) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Share of its way that the air has gone after a share of a step. */
function gone(share: number, bend: number): number {
  return bend < STRAIGHT ? share : Math.expm1(-bend * share) / Math.expm1(-bend);
}

/**
 * s from the start of a step at which the thermostat would switch; null where it would not. Between
 * start and end the house is taken to move as its air does, fast at first.
 */
export function switchTime(work: YearWork, attempt: Attempt, hour: number): number | null {
  const { setting: { inputs }, state } = work;
  const { seen, mode, step, moved } = attempt;
  const seconds = state.engine.steps[step]!;
  const end = sightOf(work, hour, moved.state);
  const switches = (share: number, sight: IntakeSight) => {
    const control = { mode, lasted: state.control.lasted + share * seconds };
    return decideMode(inputs, control, sight, 0) !== mode;
  };
  if (!switches(1, end)) return null;
  const bend = bendOf(
    state.house.airTemperature,
    moved.mean.airTemperature,
    moved.state.airTemperature,
  );
  let [low, high] = [0, 1];
  for (let halving = 0; halving < HALVINGS; halving++) {
    const middle = (low + high) / 2;
    if (switches(middle, sightBetween(seen, end, gone(middle, bend)))) high = middle;
    else low = middle;
  }
  return high * seconds;
}

/**
 * Index of the longest step that fits in a time and starts on a multiple of itself, so that steps grow
 * again after a switch: what begins in the soil begins fast.
 *
 * @param steps lengths, s
 * @param from s since the hour began
 * @param time s that may pass
 * @param most s, longest step wanted
 */
export function longestStep(
  steps: readonly number[],
  from: number,
  time: number,
  most: number,
): number {
  let best = -1;
  for (let k = 0; k < steps.length; k++) {
    const length = steps[k]!;
    if (length > most || length > time || from % length !== 0) continue;
    if (best < 0 || length > steps[best]!) best = k;
  }
  return best;
}
