/** Clocks that jumped, or are off, against another logger. @module */
import type { LoggerSeries } from "../logger_series.ts";
import { timeText } from "../time_text.ts";
import type { Finding } from "../types.ts";
import { agreementAt, aheadOf, telling, type Track, witnesses } from "./clock_witness.ts";

/** s before and after a jump that are held against the witness. */
const AROUND = 6 * 86400;
/** s of the log by which a constant offset is found. */
const STRETCH = 20 * 86400;
/** A witness must fit so much better: the rest of the correlation falls to this share. */
const BETTER = 0.6;
/** s of a jump that is looked at, and the most gaps looked at. */
const LEAST = 300;
const MOST = 200;

/** A clock found ahead of the others. */
export interface ClockOffset {
  /** s */
  readonly ahead: number;
  /** sensor it was held against */
  readonly witness: string;
}

/**
 * How far a logger's clock is ahead of the others, at the start of its log.
 *
 * @param series the logger in doubt
 * @param others all other loggers
 * @returns null where no other logger sees the same
 */
export function clockOffset(
  series: LoggerSeries,
  others: readonly LoggerSeries[],
): ClockOffset | null {
  const between = [series.times[0]!, endOfStretch(series)] as const;
  let found: { ahead: number; best: number; atZero: number; witness: string } | null = null;
  for (const [one, other] of pairs(series, others)) {
    const fit = aheadOf(one, other, between);
    if (fit !== null && fit.best > (found?.best ?? -1)) {
      found = { ...fit, witness: other.sensor.name };
    }
  }
  return found === null ? null : { ahead: found.ahead, witness: found.witness };
}

/** End of the first rows without a gap in which the clock may have jumped, of at least five days. */
function endOfStretch({ times, interval }: LoggerSeries): number {
  const [first, least] = [times[0]!, Math.max(LEAST, 0.2 * interval)];
  for (let row = 1; row < times.length && times[row]! < first + STRETCH; row++) {
    const gap = times[row]! - times[row - 1]! - interval;
    if (gap >= least && times[row - 1]! > first + STRETCH / 4) return times[row - 1]!;
  }
  return first + STRETCH;
}

/** True for an offset that is more than the loggers' own intervals blur. */
export function isOff({ ahead }: ClockOffset, interval: number): boolean {
  return Math.abs(ahead) > Math.max(LEAST, 0.75 * interval);
}

function pairs(series: LoggerSeries, others: readonly LoggerSeries[]) {
  const own = telling(series);
  return own.length === 0 ? [] : others.flatMap((other) => witnesses(own, telling(other)));
}

/** A jump of a clock. */
export interface ClockJump {
  /** s since 1970 UTC, first reading after it */
  readonly at: number;
  /** s that the clock moved ahead */
  readonly moved: number;
  /** sensor it was held against; null where none could be */
  readonly witness: string | null;
}

/**
 * Jumps of a logger's clock. A clock set forward leaves a gap in its rows; of every gap it is asked
 * whether the readings after it fit a witness better at their own times or at times moved back by
 * the gap. Without a witness only a gap after which the rows stand at other minutes is told.
 *
 * @param series the logger in doubt
 * @param others all other loggers
 */
export function clockJumps(series: LoggerSeries, others: readonly LoggerSeries[]): ClockJump[] {
  const { times, interval } = series;
  const tracks = pairs(series, others);
  const found: ClockJump[] = [];
  let [looked, standing] = [0, 0];
  for (let row = 1; row < times.length && looked < MOST; row++) {
    const moved = times[row]! - times[row - 1]! - interval;
    if (moved < Math.max(LEAST, 0.2 * interval)) continue;
    looked++;
    const at = times[row]!;
    const verdict = judge(tracks, { at, moved, standing });
    if (verdict === undefined) {
      if (otherMinutes(times, row, interval)) found.push({ at, moved, witness: null });
    } else if (verdict !== null) {
      found.push({ at, moved, witness: verdict });
      standing += moved;
    }
  }
  return found;
}

/** Name of the witness for a jump; null where witnesses speak against it, undefined with none. */
function judge(
  tracks: readonly (readonly [Track, Track])[],
  { at, moved, standing }: {
    readonly at: number;
    readonly moved: number;
    readonly standing: number;
  },
): string | null | undefined {
  let best: { name: string; rest: number; jumped: boolean } | null = null;
  for (const [one, other] of tracks) {
    const before = [at - AROUND, at] as const;
    const after = [at, at + AROUND] as const;
    const right = 1 - agreementAt(one, other, standing, before);
    const wrong = 1 - agreementAt(one, other, standing + moved, before);
    // a witness that cannot tell the two apart before cannot after
    if (!(right < 0.2) || !(right < BETTER * wrong)) continue;
    const stayed = 1 - agreementAt(one, other, standing, after);
    const jumped = 1 - agreementAt(one, other, standing + moved, after);
    if (Number.isNaN(stayed + jumped)) continue;
    if (best === null || right < best.rest) {
      best = { name: other.sensor.name, rest: right, jumped: jumped < BETTER * stayed };
    }
  }
  return best === null ? undefined : best.jumped ? best.name : null;
}

/** True where rows stood at the same minutes for a while, and at others from a row on. */
function otherMinutes(times: Float64Array, row: number, interval: number): boolean {
  const phase = (i: number) => ((times[i]! % interval) + interval) % interval;
  const apart = (a: number, b: number) => {
    const d = Math.abs(a - b);
    return Math.min(d, interval - d);
  };
  if (row < 10 || row + 10 > times.length) return false;
  const [before, after] = [phase(row - 1), phase(row)];
  const tight = 0.05 * interval;
  for (let k = 0; k < 10; k++) {
    if (apart(phase(row - 1 - k), before) > tight || apart(phase(row + k), after) > tight) {
      return false;
    }
  }
  return apart(before, after) > Math.max(90, 0.15 * interval);
}

/**
 * Jumps and settings back as findings. A clock that jumped ahead and is set back by as much is
 * right again; any other doubt lasts to the next jump, or to the end of the logger's rows.
 *
 * @param series the logger
 * @param jumps of its clock
 */
export function clockFindings(series: LoggerSeries, jumps: readonly ClockJump[]): Finding[] {
  const { logger, interval } = series;
  const end = series.times.at(-1)! + interval;
  const backs = [...series.setBacks];
  const found: Finding[] = [];
  let standing = 0;
  for (const [k, { at, moved, witness }] of jumps.entries()) {
    standing += moved;
    if (Math.abs(standing) < LEAST) continue;
    const right = backs.findIndex((back) =>
      back.at + standing > at && Math.abs(back.moved + standing) <= interval
    );
    const back = right === -1 ? undefined : backs.splice(right, 1)[0]!;
    const size = minutes(moved);
    found.push({
      kind: "clock",
      channel: logger,
      from: at,
      to: Math.min(back === undefined ? end : back.at - back.moved, jumps[k + 1]?.at ?? end),
      message: witness === null
        ? `Logger "${logger}" was started again or its clock was set: after a gap of ` +
          `${size} its rows stand at other minutes (${timeText(at)} UTC). Compare its clock`
        : `The clock of logger "${logger}" jumped ${size} ahead at ${timeText(at)} UTC: ` +
          `from there on its readings fit "${witness}" when taken as earlier by that` +
          (back === undefined ? "" : `, until it was set back at ${timeText(back.at)} UTC`) +
          ". Give clock pieces (from, ahead) in the log map",
    });
    if (back !== undefined) standing += back.moved;
  }
  return [
    ...found,
    ...backs.map(({ at, moved }): Finding => ({
      kind: "clock",
      channel: logger,
      from: at,
      to: end,
      message: `The clock of logger "${logger}" was set back by ${minutes(-moved)} at ` +
        `${timeText(at)} UTC: times repeat with other readings. Which side is right the rows do ` +
        "not say; give clock pieces (from, ahead) in the log map",
    })),
  ];
}

function minutes(seconds: number): string {
  return `${Math.round(seconds / 6) / 10} min`;
}
