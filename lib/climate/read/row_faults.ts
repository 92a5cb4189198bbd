/** Faults in the order of rows, in words that say what to do. @module */
import { max, min } from "d3-array";
import { describeHour, HOURS_PER_YEAR, InputError, monthOfHour } from "../../basics/mod.ts";
import { findGaps, LONGEST_GAP } from "../gaps.ts";
import { firstRowOf, type HourRows } from "./hour_rows.ts";
import { FaultList, type Stamp, type TableLayout } from "./table.ts";

/** Refuses rows of 29 February unless they may be left out. */
export function refuseLeapDay(layout: TableLayout, lines: readonly number[]): void {
  if (lines.length === 0 || layout.leaveOutLeapDay) return;
  throw new InputError(
    `Cannot use 29 February: a study runs 365 days, found ${lines.length} rows of that day up to ` +
      `line ${lines.at(-1)}; delete them, or write leapDay: leave out in a columns file`,
    { file: layout.file, line: lines[0] },
  );
}

/** Refuses a record of several years, which has every moment more than once. */
export function refuseManyYears(
  layout: TableLayout,
  stamps: readonly Stamp[],
  twice: readonly (readonly [first: number, second: number, hour: number])[],
): void {
  const again = twice.find(([first, second]) => stamps[first]!.year !== stamps[second]!.year);
  if (again === undefined) return;
  const years = stamps.map((stamp) => stamp.year!);
  const first = min(years)!;
  const last = max(years)!;
  throw new InputError(
    `Cannot use a record of several years: expected twelve months, found rows of ${first} to ${last}; ` +
      `extract twelve months, or write from: ${first}-01-01 (or another date, as for a winter from July ` +
      "to June) under time in the columns file",
    { file: layout.file, line: layout.firstLine + again[1] },
  );
}

/** Refuses moments that stand twice; says so where summer time is the likely reason. */
export function refuseTwice(
  layout: TableLayout,
  hours: HourRows,
  twice: readonly [number, number, number][],
): void {
  if (twice.length === 0) return;
  const [, second, hour] = twice[0]!;
  const location = { file: layout.file, line: layout.firstLine + second };
  const missing = firstMissing(hours);
  if (twice.length <= 12 && missing !== -1 && looksLikeClockChange(missing, hour)) {
    throw new InputError(
      `Cannot place the rows on the year: ${describeHour(missing)} is missing and ${
        describeHour(hour)
      } ` +
        "appears twice, as when clocks change for daylight saving; export the file in standard time, or " +
        "write daylightSaving: yes under time in the columns file",
      location,
    );
  }
  const faults = new FaultList();
  for (const [one, other, when] of twice.slice(0, 10)) {
    faults.add(
      `Cannot use this row: expected each hour once, found ${describeHour(when)} in lines ` +
        `${layout.firstLine + one} and ${layout.firstLine + other}; delete one` +
        (twice.length > 10 && when === hour ? ` (${twice.length} hours appear twice in all)` : ""),
      { file: layout.file, line: layout.firstLine + other },
    );
  }
  faults.throwIfAny();
}

/** Two rows in one hour of a table that has one an hour: stamps are off the hour or out of step. */
export function refuseShared(layout: TableLayout, hours: HourRows): void {
  const faults = new FaultList();
  for (let hour = 0; hour < HOURS_PER_YEAR; hour++) {
    const from = hours.starts[hour]!;
    if (hours.starts[hour + 1]! - from < 2) continue;
    const [one, other] = [hours.rows[from]!, hours.rows[from + 1]!];
    faults.add(
      `Cannot use this row: expected one row an hour, found ${describeHour(hour)} in lines ` +
        `${layout.firstLine + one} and ${layout.firstLine + other}; correct the time`,
      { file: layout.file, line: layout.firstLine + other },
    );
  }
  faults.throwIfAny();
}

function firstMissing(hours: HourRows): number {
  for (let hour = 0; hour < HOURS_PER_YEAR; hour++) if (firstRowOf(hours, hour) === -1) return hour;
  return -1;
}

/** One hour missing and one doubled, five to nine months apart, in the months clocks change. */
function looksLikeClockChange(missing: number, doubled: number): boolean {
  const months = [monthOfHour(missing) + 1, monthOfHour(doubled) + 1].sort((a, b) => a - b);
  return [3, 4].includes(months[0]!) && [9, 10, 11].includes(months[1]!);
}

/** Refuses runs of missing hours longer than {@link LONGEST_GAP}. */
export function refuseLongGaps(layout: TableLayout, rows: HourRows): void {
  const faults = new FaultList();
  for (const gap of findGaps((hour) => firstRowOf(rows, hour) === -1)) {
    if (gap.length <= LONGEST_GAP) continue;
    const before = gap.start === 0 ? -1 : firstRowOf(rows, gap.start - 1);
    faults.add(
      `Cannot fill the gap: ${gap.length} hours are missing from ${describeHour(gap.start)} to ` +
        `${
          describeHour(gap.start + gap.length - 1)
        }; at most ${LONGEST_GAP} are filled in; complete the ` +
        "file from a neighbouring station or another year",
      { file: layout.file, line: before === -1 ? layout.firstLine : layout.firstLine + before },
    );
  }
  faults.throwIfAny();
}
