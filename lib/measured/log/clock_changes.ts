/** Where a logger's own clock was changed, as the rows themselves show it. @module */
import { DAY } from "../../basics/mod.ts";

/** A place in the rows where the clock does not go on by one interval. */
export interface ClockChange {
  /** row, in the order written, that stands after the change */
  readonly row: number;
  /** s that the clock moved: 3600 where an hour was skipped, -3600 where one was repeated */
  readonly moved: number;
}

const HOUR = 3600;
/** More backward steps than this are rows out of order, not clocks. */
const MOST_CHANGES = 50;

/**
 * Hours skipped and repeated as when clocks change for daylight saving: by one hour, between 0:00
 * and 4:00, in the months clocks change.
 *
 * @param clock s of the logger's clock by row, in the order written
 * @param interval s between rows
 * @param sundaysOnly true where nobody said that the clock changes
 */
export function seasonalChanges(
  clock: Float64Array,
  interval: number,
  sundaysOnly: boolean,
): ClockChange[] {
  const found: ClockChange[] = [];
  for (let row = 1; row < clock.length; row++) {
    const moved = clock[row]! - clock[row - 1]! - interval;
    const forth = Math.abs(moved - HOUR) < 0.5 * interval;
    const back = Math.abs(moved + HOUR) < 0.5 * interval;
    if (!forth && !back) continue;
    const before = new Date((clock[row - 1]! + interval) * 1000);
    const month = before.getUTCMonth() + 1;
    const hour = before.getUTCHours();
    const months = forth ? [3, 4, 8, 9, 10] : [3, 4, 9, 10, 11];
    if (hour > 4 || !months.includes(month)) continue;
    if (sundaysOnly && before.getUTCDay() !== 0) continue;
    found.push({ row, moved: forth ? HOUR : -HOUR });
  }
  return found;
}

/** From which row to which the clock shows summer time. */
export interface SummerRows {
  /** first row */
  readonly from: number;
  /** first row after it; the number of rows where it lasts */
  readonly to: number;
}

/**
 * Rows in summer time, from the hours skipped and repeated.
 *
 * @param changes in the order of the rows
 * @param clock s of the logger's clock by row
 */
export function summerRows(changes: readonly ClockChange[], clock: Float64Array): SummerRows[] {
  const found: SummerRows[] = [];
  let from = -1;
  for (const { row, moved } of changes) {
    if (moved > 0) {
      if (from === -1) from = row;
    } else {
      found.push({ from: from === -1 ? afterLongGap(clock, row) : from, to: row });
      from = -1;
    }
  }
  if (from !== -1) found.push({ from, to: clock.length });
  return found;
}

/** The first row after the last gap of more than a day before a row: the change may lie in it. */
function afterLongGap(clock: Float64Array, row: number): number {
  for (let one = row - 1; one > 0; one--) {
    if (clock[one]! - clock[one - 1]! > DAY) return one;
  }
  return 0;
}

/**
 * Rows at which the clock was set back: it repeats times that stand before, with other readings.
 *
 * @param clock s of the logger's clock by row, in the order written
 * @param interval s between rows
 * @param differ true where two rows hold other readings
 */
export function setBack(
  clock: Float64Array,
  interval: number,
  differ: (one: number, other: number) => boolean,
): ClockChange[] {
  const backward: number[] = [];
  for (let row = 1; row < clock.length; row++) {
    if (clock[row]! - clock[row - 1]! < -0.5 * interval) backward.push(row);
    if (backward.length > MOST_CHANGES) return [];
  }
  if (backward.length === 0) return [];
  const place = (row: number) => Math.round(clock[row]! / interval);
  const rowAt = new Map<number, number>();
  const found: ClockChange[] = [];
  let next = 0;
  for (let row = 0; row < clock.length; row++) {
    if (row === backward[next]) {
      next++;
      let [again, other] = [0, 0];
      for (let one = row; one < clock.length && rowAt.has(place(one)); one++) {
        again++;
        if (differ(rowAt.get(place(one))!, one)) other++;
      }
      if (other > 0 && other >= 0.5 * again) {
        found.push({ row, moved: clock[row]! - clock[row - 1]! - interval });
      }
    }
    if (!rowAt.has(place(row))) rowAt.set(place(row), row);
  }
  return found;
}
