/** How long the next step may be, and when the fan switches within it. @module */
import { halve } from "../../basics/mod.ts";
import { decideMode } from "../control.ts";
import type { Attempt } from "./attempt.ts";
import { type IntakeSight, sightBetween, sightOf } from "./sight.ts";
import type { YearWork } from "./year_work.ts";

/** Share of a step to which the moment is found at which the fan switches. */
const SWITCH_WITHIN = 1 / 32;

/** Time constants in a step beyond which the air is at its end at once, and below which it goes straight. */
const MOST_BEND = 60;
const STRAIGHT = 1e-3;
/** Time constants to which they are found. */
const BEND_WITHIN = MOST_BEND / 2 ** 20;

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
  const { holds, fails } = halve(
    (bend) => -1 / Math.expm1(-bend) - 1 / bend < weight,
    0,
    MOST_BEND,
    BEND_WITHIN,
  );
  return (holds + fails) / 2;
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
  const stays = (share: number) => !switches(share, sightBetween(seen, end, gone(share, bend)));
  return halve(stays, 0, 1, SWITCH_WITHIN).fails * seconds;
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
