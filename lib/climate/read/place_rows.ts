/** Rows of a table placed on the 8760 hours of a year. @module */
import { HOURS_PER_YEAR, InputError, MONTH_FIRST_HOURS } from "../../basics/mod.ts";
import { groupRows, type HourRows } from "./hour_rows.ts";
import {
  refuseLeapDay,
  refuseLongGaps,
  refuseManyYears,
  refuseShared,
  refuseTwice,
} from "./row_faults.ts";
import { StampFault } from "./stamp.ts";
import { FaultList, type Stamp, type TableLayout } from "./table.ts";

/**
 * Finds the rows of each hour of the year; a table finer than hours has several, to be averaged.
 *
 * @param layout the table and where its stamps stand
 * @returns rows by hour; at most {@link LONGEST_GAP} hours in a row have none
 * @throws {InputErrors} for hours given twice, 29 February, longer gaps and rows that are no moments
 */
export function placeRows(layout: TableLayout): HourRows {
  if (layout.rows.length === 0) {
    throw new InputError("Cannot read the climate: expected 8760 rows of hours, found none", {
      file: layout.file,
    });
  }
  const rows = layout.stamp === null ? rowsInOrder(layout) : rowsByStamp(layout, layout.stamp);
  refuseLongGaps(layout, rows);
  return rows;
}

function rowsInOrder(layout: TableLayout): HourRows {
  const found = layout.rows.length;
  if (found === 8784 && layout.leaveOutLeapDay) {
    const hours = Int32Array.from({ length: found }, (_, row) => {
      if (row < LEAP_START) return row;
      return row < LEAP_START + 24 ? -1 : row - 24;
    });
    return groupRows(hours, 1);
  }
  if (found !== HOURS_PER_YEAR) {
    const [first, last] = [layout.firstLine + LEAP_START, layout.firstLine + LEAP_START + 23];
    const advice = found === 8784
      ? `29 February is in lines ${first} to ${last}; delete it, or write leapDay: leave out in ` +
        "the columns file"
      : "give the columns that hold date and time, or a file with every hour";
    throw new InputError(
      `Cannot place the rows on the year: expected 8760 rows in order from 1 January, found ${found}; ${advice}`,
      {
        file: layout.file,
        line: found === 8784 ? first : layout.firstLine + Math.min(found, HOURS_PER_YEAR) - 1,
      },
    );
  }
  const shift = Math.round(layout.shiftMinutes / 60);
  const hours = Int32Array.from(
    { length: found },
    (_, row) => (row + shift + HOURS_PER_YEAR) % HOURS_PER_YEAR,
  );
  return groupRows(hours, 1);
}

type StampOf = NonNullable<TableLayout["stamp"]>;

function rowsByStamp(layout: TableLayout, stampOf: StampOf): HourRows {
  const stamps = readStamps(layout, stampOf);
  const leapYear = stamps.some((stamp) => stamp.month === 2 && stamp.day === 29);
  const hourOfRow = new Int32Array(stamps.length);
  const rowOfMinute = new Map<number, number>();
  const twice: [first: number, second: number, hour: number][] = [];
  const leapLines: number[] = [];
  const minutes = new Float64Array(stamps.length);
  stamps.forEach((stamp, row) => {
    const minute = minuteOfStamp(stamp, layout, leapYear);
    const hour = hourOfMinute(minute, leapYear);
    minutes[row] = minute;
    hourOfRow[row] = hour;
    if (hour === -1) leapLines.push(layout.firstLine + row);
    const before = rowOfMinute.get(minute);
    if (before === undefined) rowOfMinute.set(minute, row);
    else if (hour !== -1) twice.push([before, row, hour]);
  });
  refuseManyYears(layout, stamps, twice);
  refuseLeapDay(layout, leapLines);
  const perHour = Math.max(1, Math.round(stamps.length / (leapYear ? 8784 : HOURS_PER_YEAR)));
  const hours = groupRows(hourOfRow, perHour, minutesEarly(minutes, layout));
  refuseTwice(layout, hours, twice);
  if (perHour === 1) refuseShared(layout, hours);
  return hours;
}

/** Minutes by which the middle of the rows lies after the middle of their clock hour, on the mean. */
function minutesEarly(minutes: Float64Array, layout: TableLayout): number {
  const steps = minutes.slice(1).map((minute, row) => minute - minutes[row]!).sort();
  const step = steps[steps.length >> 1] ?? 60;
  const middle = { start: step / 2, middle: 0, end: 1 - step / 2 }[layout.stampAt];
  const total = minutes.reduce((sum, minute) => sum + minute % 60 + middle - 30, 0);
  return total / minutes.length;
}

function readStamps(layout: TableLayout, stampOf: StampOf): Stamp[] {
  const faults = new FaultList();
  const stamps = layout.rows.map((cells, row) => {
    try {
      return stampOf(cells, layout.firstLine + row);
    } catch (error) {
      if (!(error instanceof StampFault)) throw error;
      faults.add(error.message, { file: layout.file, line: layout.firstLine + row });
      return { month: 1, day: 1, minutes: 0 };
    }
  });
  faults.throwIfAny();
  return stamps;
}

/** Minute of the year a row belongs to, in local standard time; rows that end theirs a minute less. */
function minuteOfStamp(stamp: Stamp, layout: TableLayout, leapYear: boolean): number {
  const afterLeapDay = leapYear && stamp.month > 2 ? 24 : 0;
  const start = MONTH_FIRST_HOURS[stamp.month - 1]! + afterLeapDay + (stamp.day - 1) * 24;
  const inYear = (leapYear ? 366 : 365) * 1440;
  const atEnd = layout.stampAt === "end" ? 1 : 0;
  const minutes = start * 60 + stamp.minutes + layout.shiftMinutes - atEnd;
  return ((minutes % inYear) + inYear) % inYear;
}

/** Hour of the 365-day year; -1 on 29 February. */
function hourOfMinute(minute: number, leapYear: boolean): number {
  const hour = Math.floor(minute / 60);
  if (!leapYear || hour < LEAP_START) return hour;
  return hour < LEAP_START + 24 ? -1 : hour - 24;
}

/** Hour of a leap year at which 29 February starts. */
const LEAP_START = 1416;
