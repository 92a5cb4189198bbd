/** The 8760 hours of a year of 365 days. @module */
import { HOURS_PER_YEAR, MONTH_DAYS } from "../basics/mod.ts";

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

const MONTHS = Uint8Array.from(
  { length: HOURS_PER_YEAR },
  (_, hour) => MONTH_STARTS.findLastIndex((start) => start <= hour),
);

/** Month of an hour of the year, 0 to 11. */
export function monthOfHour(hour: number): number {
  return MONTHS[hour]!;
}

/** An hour of the year as "3 March 14:00". */
export function describeHour(hour: number): string {
  const month = monthOfHour(hour);
  const within = hour - MONTH_STARTS[month]!;
  const clock = String(within % 24).padStart(2, "0");
  return `${Math.floor(within / 24) + 1} ${MONTH_NAMES[month]} ${clock}:00`;
}

/** Longest run of missing hours that is filled in. */
export const LONGEST_GAP = 6;

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
