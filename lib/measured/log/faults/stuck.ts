/** Readings that stay the same for longer than their channel ever keeps one. @module */
import { quantile } from "../numbers.ts";
import type { Span } from "./spikes.ts";

/** A run is stuck where it is so many times longer than the longest usual ones. */
const OVER_USUAL = 3;

/** share of a channel's changes that are its least one, from which on it is one that hardly moves */
const MOSTLY_LEAST = 0.9;

/** How long a channel may keep one value. */
export interface StuckLimits {
  /** s that a working sensor may keep one value at any rate */
  readonly least: number;
  /** s between readings */
  readonly interval: number;
  /** values at which it may rest for ever: 0 of the sun, 1 of humidity */
  readonly mayRest: (value: number) => boolean;
}

/**
 * Runs of one and the same value: longer than the least time and than three times the run that one
 * in a hundred changes of this channel reaches, gaps counted in. A slow wave without noise stands still
 * where it turns: a run that a channel of least steps enters and leaves by one such step is none.
 *
 * @param values readings, NaN where there is none
 * @param limits how long it may stay
 */
export function findStuck(values: Float64Array, limits: StuckLimits): Span[] {
  const runs: Span[] = [];
  let from = -1;
  let last = -1;
  for (let i = 0; i < values.length; i++) {
    if (Number.isNaN(values[i]!)) continue;
    if (from !== -1 && values[i] !== values[from]) {
      runs.push({ from, to: last + 1 });
      from = i;
    } else if (from === -1) from = i;
    last = i;
  }
  if (from !== -1) runs.push({ from, to: last + 1 });
  const lengths = runs.filter((run) => !limits.mayRest(values[run.from]!))
    .map((run) => run.to - run.from);
  // a channel that never changes has no usual run: any long one is stuck
  const usual = runs.length < 10 ? 1 : quantile(lengths, 0.99);
  const limit = Math.max(limits.least / limits.interval, OVER_USUAL * usual);
  const turns = turningPoint(values, runs);
  return runs.filter((run, k) =>
    run.to - run.from > limit && !limits.mayRest(values[run.from]!) && !turns(k)
  );
}

/** Whether a run is one at which a slow and quiet channel turns. */
function turningPoint(values: Float64Array, runs: readonly Span[]): (place: number) => boolean {
  const change = (place: number) =>
    Math.abs(values[runs[place]!.from]! - values[runs[place - 1]!.from]!);
  const changes = runs.slice(1).map((_, k) => change(k + 1));
  const least = 1.5 * changes.reduce((low, one) => Math.min(low, one), Infinity);
  const slow = changes.filter((one) => one < least).length >= MOSTLY_LEAST * changes.length;
  return (place) =>
    slow && place > 0 && place + 1 < runs.length && change(place) < least &&
    change(place + 1) < least;
}
