/** How long the next step may be, and when the fan switches within it. @module */
import { decideMode } from "../control.ts";
import type { Attempt } from "./attempt.ts";
import { sightBetween, sightOf } from "./sight.ts";
import type { YearWork } from "./year_work.ts";

/** Halvings of a step in search of the moment at which the fan switches. */
const HALVINGS = 5;

/** s from the start of a step at which the thermostat would switch; null where it would not. */
export function switchTime(work: YearWork, attempt: Attempt, hour: number): number | null {
  const { setting: { inputs }, state } = work;
  const { seen, mode, step } = attempt;
  const seconds = state.engine.steps[step]!;
  const end = sightOf(work, hour, attempt.moved.state);
  const switches = (share: number) => {
    const control = { mode, lasted: state.control.lasted + share * seconds };
    return decideMode(inputs, control, sightBetween(seen, end, share), 0) !== mode;
  };
  if (!switches(1)) return null;
  let [low, high] = [0, 1];
  for (let halving = 0; halving < HALVINGS; halving++) {
    const middle = (low + high) / 2;
    if (switches(middle)) high = middle;
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
