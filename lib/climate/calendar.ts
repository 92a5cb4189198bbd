/** Rows of a table placed on the 8760 hours of a year. @module */
import { HOURS_PER_YEAR, InputError, MONTH_DAYS } from "../basics/mod.ts";
import { FaultList, type Stamp, type TableLayout } from "./table.ts";

/** First hour of each month, and of the year after. */
export const MONTH_STARTS: readonly number[] = MONTH_DAYS.reduce<number[]>(
  (starts, days) => [...starts, starts.at(-1)! + days * 24],
  [0],
);

/** Names of the months. */
export const MONTH_NAMES: readonly string[] = [
  "January",
  "February",
  "March",
  "April",
  "May",
  "June",
  "July",
  "August",
  "September",
  "October",
  "November",
  "December",
];

/** Month of an hour of the year, 0 to 11. */
export function monthOfHour(hour: number): number {
  let month = 0;
  while (hour >= MONTH_STARTS[month + 1]!) month++;
  return month;
}

/** An hour of the year as "3 March 14:00". */
export function describeHour(hour: number): string {
  const month = monthOfHour(hour);
  const within = hour - MONTH_STARTS[month]!;
  const clock = String(within % 24).padStart(2, "0");
  return `${Math.floor(within / 24) + 1} ${MONTH_NAMES[month]} ${clock}:00`;
}

/** Which row of a table holds each hour of the year; -1 where none does. */
export type HourRows = Int32Array;

/** Longest run of missing hours that is filled in. */
export const LONGEST_GAP = 6;

/**
 * Finds the row of each hour of the year.
 *
 * @param layout the table and where its stamps stand
 * @returns row by hour, -1 for missing hours (runs of at most {@link LONGEST_GAP})
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
    return Int32Array.from({ length: HOURS_PER_YEAR }, (_, hour) => hour < 1416 ? hour : hour + 24);
  }
  if (found !== HOURS_PER_YEAR) {
    const advice = found === 8784
      ? `29 February stands in lines ${layout.firstLine + 1416} to ${
        layout.firstLine + 1439
      }; take ` +
        "it out, or write leapDay: leave out in the columns file"
      : "give the columns that hold date and time, or a file with every hour";
    throw new InputError(
      `Cannot place the rows on the year: expected 8760 rows in order from 1 January, found ${found}; ${advice}`,
      { file: layout.file, line: layout.firstLine + Math.min(found, HOURS_PER_YEAR) - 1 },
    );
  }
  const shift = Math.round(layout.shiftMinutes / 60);
  const rows = new Int32Array(HOURS_PER_YEAR);
  for (let row = 0; row < HOURS_PER_YEAR; row++) {
    rows[(row + shift + HOURS_PER_YEAR) % HOURS_PER_YEAR] = row;
  }
  return rows;
}

type StampOf = NonNullable<TableLayout["stamp"]>;

function rowsByStamp(layout: TableLayout, stampOf: StampOf): HourRows {
  const stamps = readStamps(layout, stampOf);
  const leapYear = stamps.some((stamp) => stamp.month === 2 && stamp.day === 29);
  const rows = new Int32Array(HOURS_PER_YEAR).fill(-1);
  const twice: [first: number, second: number, hour: number][] = [];
  const leapLines: number[] = [];
  stamps.forEach((stamp, row) => {
    const hour = hourOfStamp(stamp, layout, leapYear);
    if (hour === null) leapLines.push(layout.firstLine + row);
    else if (rows[hour] !== -1) twice.push([rows[hour]!, row, hour]);
    else rows[hour] = row;
  });
  refuseLeapDay(layout, leapLines);
  refuseTwice(layout, rows, twice);
  return rows;
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

/** A row whose date or time cannot be read. */
export class StampFault extends Error {}

/**
 * Checks a date and time and makes a stamp of them.
 *
 * @param month 1 to 12
 * @param day 1 to 31
 * @param minutes after 00:00, 0 to 1440
 * @param text what stood in the file, for the message
 * @throws {StampFault} for a moment that does not exist
 */
export function makeStamp(month: number, day: number, minutes: number, text: string): Stamp {
  const days = month === 2 ? 29 : MONTH_DAYS[month - 1] ?? 0;
  const whole = Number.isInteger(month) && Number.isInteger(day);
  if (!whole || !(day >= 1 && day <= days) || !(minutes >= 0 && minutes <= 1440)) {
    throw new StampFault(
      `Cannot read the time: expected a month, a day and an hour of 0 to 24, found "${text}"; correct the line`,
    );
  }
  return { month, day, minutes };
}

/** Hour of the year an entry starts at; null on 29 February. */
function hourOfStamp(stamp: Stamp, layout: TableLayout, leapYear: boolean): number | null {
  const afterLeapDay = leapYear && stamp.month > 2 ? 24 : 0;
  const start = MONTH_STARTS[stamp.month - 1]! + afterLeapDay + (stamp.day - 1) * 24;
  const inYear = (leapYear ? 366 : 365) * 1440;
  const atEnd = layout.stampAt === "end" ? 1 : 0;
  const minutes = start * 60 + stamp.minutes + layout.shiftMinutes - atEnd;
  const hour = Math.floor(((minutes % inYear) + inYear) % inYear / 60);
  if (!leapYear || hour < LEAP_START) return hour;
  return hour < LEAP_START + 24 ? null : hour - 24;
}

/** Hour of a leap year at which 29 February starts. */
const LEAP_START = 1416;

function refuseLeapDay(layout: TableLayout, lines: readonly number[]): void {
  if (lines.length === 0 || layout.leaveOutLeapDay) return;
  throw new InputError(
    `Cannot use 29 February: a study runs 365 days, found ${lines.length} rows of that day up to ` +
      `line ${lines.at(-1)}; take them out, or write leapDay: leave out in a columns file`,
    { file: layout.file, line: lines[0] },
  );
}

function refuseTwice(
  layout: TableLayout,
  rows: HourRows,
  twice: readonly [number, number, number][],
): void {
  if (twice.length === 0) return;
  const each = layout.rows.length / HOURS_PER_YEAR;
  const [, second, hour] = twice[0]!;
  const location = { file: layout.file, line: layout.firstLine + second };
  if (each > 1.9) {
    throw new InputError(
      `Cannot place the rows on the year: expected one row an hour, found about ${
        each.toFixed(1)
      }; ` +
        "give one year of hourly means",
      location,
    );
  }
  const missing = rows.findIndex((row) => row === -1);
  if (twice.length <= 2 && missing !== -1 && looksLikeClockChange(missing, hour)) {
    throw new InputError(
      `Cannot place the rows on the year: ${describeHour(missing)} is missing and ${
        describeHour(hour)
      } ` +
        "stands twice, as where clocks change to summer time; export the file in standard time, or " +
        "write daylightSaving: yes under time in the columns file",
      location,
    );
  }
  const faults = new FaultList();
  for (const [one, other, when] of twice.slice(0, 10)) {
    faults.add(
      `Cannot use this row: expected each hour once, found ${describeHour(when)} in lines ` +
        `${layout.firstLine + one} and ${layout.firstLine + other}; take one out` +
        (twice.length > 10 && when === hour ? ` (${twice.length} hours stand twice in all)` : ""),
      { file: layout.file, line: layout.firstLine + other },
    );
  }
  faults.throwIfAny();
}

/** One hour missing and one doubled, five to nine months apart, in the months clocks change. */
function looksLikeClockChange(missing: number, doubled: number): boolean {
  const months = [monthOfHour(missing) + 1, monthOfHour(doubled) + 1].sort((a, b) => a - b);
  return [3, 4].includes(months[0]!) && [9, 10, 11].includes(months[1]!);
}

function refuseLongGaps(layout: TableLayout, rows: HourRows): void {
  const faults = new FaultList();
  for (const gap of findGaps((hour) => rows[hour] === -1)) {
    if (gap.length <= LONGEST_GAP) continue;
    const before = gap.start === 0 ? -1 : rows[gap.start - 1]!;
    faults.add(
      `Cannot fill the gap: ${gap.length} hours are missing from ${describeHour(gap.start)} to ` +
        `${
          describeHour(gap.start + gap.length - 1)
        }, at most ${LONGEST_GAP} are filled in; complete the ` +
        "file from a neighbouring station or another year",
      { file: layout.file, line: before === -1 ? layout.firstLine : layout.firstLine + before },
    );
  }
  faults.throwIfAny();
}

/** A run of hours. */
export interface HourRun {
  readonly start: number;
  readonly length: number;
}

/** Runs of hours of the year for which something holds. */
export function findGaps(holds: (hour: number) => boolean): HourRun[] {
  const runs: HourRun[] = [];
  for (let hour = 0; hour < HOURS_PER_YEAR; hour++) {
    if (!holds(hour)) continue;
    const start = hour;
    while (hour < HOURS_PER_YEAR && holds(hour)) hour++;
    runs.push({ start, length: hour - start });
  }
  return runs;
}
