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

/** Places of the step lengths of an engine, and those allowed in each case. */
export const [SHORT, LONG, FINE] = [0, 1, 2] as const;
export const SHORT_ONLY = [SHORT];
export const RUNNING = [SHORT, FINE];
export const ANY = [LONG, SHORT, FINE];

/** Without the sun the air of a resting house moves slowly. */
export function isDark({ setting: { climate } }: YearWork, hour: number): boolean {
  return climate.globalHorizontal[hour] === 0;
}

/** Index of the longest of some steps that fits in a time. */
export function longestIn(
  lengths: readonly number[],
  steps: readonly number[],
  time: number,
): number {
  let best = -1;
  for (const step of steps) {
    const length = lengths[step] ?? Infinity;
    if (length <= time && (best < 0 || length > lengths[best]!)) best = step;
  }
  return best;
}
