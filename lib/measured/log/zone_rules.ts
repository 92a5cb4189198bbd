/** Clocks that follow the rules of a named zone, such as Europe/Berlin. @module */
import { DAY, HOUR } from "../../basics/mod.ts";
import { QuantityError, readTimeZone } from "../../units/mod.ts";

/** The zone of a clock. */
export interface ClockZone {
  /** h east of UTC of its standard time */
  readonly timeZone: number;
  /** name in the IANA time zone database, whose changes the clock follows; null for a fixed distance */
  readonly rules: string | null;
}

/** A change of the clocks of a zone. */
export interface ZoneChange {
  /** s since 1970 UTC */
  readonly at: number;
  /** s east of UTC before it */
  readonly before: number;
  /** s east of UTC after it */
  readonly after: number;
}

/**
 * Reads the zone of a clock: as {@link readTimeZone} does, or a name of the IANA time zone database
 * [iana-tz-web], which has a slash.
 *
 * @example
 * ```ts
 * import { assertEquals } from "@std/assert";
 * import { readClockZone } from "./zone_rules.ts";
 *
 * assertEquals(readClockZone("UTC-6"), { timeZone: -6, rules: null });
 * assertEquals(readClockZone("Europe/Berlin"), { timeZone: 1, rules: "Europe/Berlin" });
 * ```
 *
 * @param text what the user wrote, or h east of UTC
 * @throws {QuantityError} for what is no zone, with what is expected
 */
export function readClockZone(text: string | number): ClockZone {
  if (typeof text === "number" || !text.includes("/")) {
    return { timeZone: readTimeZone(text), rules: null };
  }
  const rules = text.trim();
  try {
    const thisYear = offsetsOf(rules);
    const months = Array.from({ length: 12 }, (_, month) => thisYear(Date.UTC(2025, month) / 1000));
    return { timeZone: Math.min(...months) / HOUR, rules };
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    throw new QuantityError(
      "expected a time zone such as UTC-6, MST or Europe/Berlin (area and city, as in the IANA " +
        `time zone database); found "${rules}"`,
    );
  }
}

/** s east of UTC of a zone at a moment, s since 1970 UTC. */
function offsetsOf(zone: string): (seconds: number) => number {
  const format = new Intl.DateTimeFormat("en-US", {
    timeZone: zone,
    hourCycle: "h23",
    year: "numeric",
    month: "numeric",
    day: "numeric",
    hour: "numeric",
    minute: "numeric",
    second: "numeric",
  });
  return (seconds) => {
    const parts = format.formatToParts(1000 * seconds);
    const [year, month, day, hour, minute, second] = [
      "year",
      "month",
      "day",
      "hour",
      "minute",
      "second",
    ].map((name) => Number(parts.find(({ type }) => type === name)!.value));
    return Date.UTC(year!, month! - 1, day, hour, minute, second) / 1000 - Math.floor(seconds);
  };
}

/**
 * Changes of the clocks of a zone.
 *
 * @param zone name in the IANA time zone database
 * @param from s since 1970 UTC
 * @param to s since 1970 UTC
 * @returns in the order of time
 */
export function zoneChanges(
  zone: string,
  from: number,
  to: number,
): { readonly first: number; readonly changes: readonly ZoneChange[] } {
  const offset = offsetsOf(zone);
  const changes: ZoneChange[] = [];
  let low = Math.floor(from);
  const first = offset(low);
  for (let before = first; low < to; low += DAY) {
    const after = offset(low + DAY);
    if (after === before) continue;
    let [early, late] = [low, low + DAY];
    while (late - early > 1) {
      const middle = Math.floor((early + late) / 2);
      if (offset(middle) === before) early = middle;
      else late = middle;
    }
    changes.push({ at: late, before, after });
    before = after;
  }
  return { first, changes };
}

/** Rows that a zone's rules do not explain. */
export interface OddRows {
  /** first row */
  readonly from: number;
  /** row after the last */
  readonly to: number;
  /** `skipped`: the clock shows an hour that its zone skips; `once`: it shows a repeated hour once */
  readonly what: "skipped" | "once";
  /** the change of clocks */
  readonly change: ZoneChange;
}

/**
 * True times of a clock that follows a zone. An hour that comes twice is told by the step back between
 * its rows; where there is none they count as the first of the two.
 *
 * @param zone name in the IANA time zone database
 * @param clock s of the logger's clock by row, in the order written, as if it were UTC
 * @param interval s between rows
 */
export function zoneTimes(
  zone: string,
  clock: Float64Array,
  interval: number,
): { readonly times: Float64Array; readonly odd: readonly OddRows[] } {
  let [low, high] = [Infinity, -Infinity];
  for (const one of clock) [low, high] = [Math.min(low, one), Math.max(high, one)];
  const { first, changes } = zoneChanges(zone, low - 2 * DAY, high + 2 * DAY);
  const times = clock.map((one) => one - first);
  for (const { at, before, after } of changes) {
    // where an hour is skipped its rows are taken as those of a clock not yet set
    const from = at + before;
    for (let row = 0; row < clock.length; row++) {
      if (clock[row]! >= Math.max(from, at + after)) times[row] = clock[row]! - after;
    }
    for (const [start, end] of runsWithin(clock, at + after, from)) {
      const back = stepBack(clock, start, end, { interval, shift: before - after });
      for (let row = back; row < end; row++) times[row] = clock[row]! - after;
    }
  }
  return { times, odd: oddRows(clock, changes, interval) };
}

/** Runs of rows, each from a first to after a last, whose clock lies from one value to below another. */
function runsWithin(clock: Float64Array, from: number, to: number): [number, number][] {
  const runs: [number, number][] = [];
  for (let row = 0; row < clock.length; row++) {
    if (!(clock[row]! >= from && clock[row]! < to)) continue;
    if (runs.at(-1)?.[1] === row) runs.at(-1)![1] = row + 1;
    else runs.push([row, row + 1]);
  }
  return runs;
}

/** Row of a run from which on the clock was set back; the end of the run where it never was. */
function stepBack(
  clock: Float64Array,
  start: number,
  end: number,
  { interval, shift }: { readonly interval: number; readonly shift: number },
): number {
  for (let row = start + 1; row < end; row++) {
    if (clock[row]! - clock[row - 1]! - interval < -0.5 * shift) return row;
  }
  return end;
}

function oddRows(
  clock: Float64Array,
  changes: readonly ZoneChange[],
  interval: number,
): OddRows[] {
  const joins = (row: number) =>
    row > 0 && row < clock.length && Math.abs(clock[row]! - clock[row - 1]! - interval) < interval;
  return changes.flatMap((change, k): OddRows[] => {
    const { at, before, after } = change;
    if (after > before) {
      // a stamp at the very change ends the time before it
      const [run] = runsWithin(clock, at + before + 1, at + after);
      if (run === undefined) return [];
      const next = changes[k + 1];
      const until = next === undefined ? Infinity : next.at + next.before;
      let to = run[1];
      while (to < clock.length && clock[to]! < until && clock[to]! > clock[run[0]]!) to++;
      return [{ from: run[0], to, what: "skipped", change }];
    }
    return runsWithin(clock, at + after, at + before)
      .filter(([start, end]) =>
        stepBack(clock, start, end, { interval, shift: before - after }) === end &&
        joins(start) && joins(end)
      )
      .map(([from, to]) => ({ from, to, what: "once", change }));
  });
}
