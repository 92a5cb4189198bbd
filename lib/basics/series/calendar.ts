/** The 8760 hours of a year of 365 days: 29 February is left out. @module */
import { HOURS_PER_YEAR, MONTH_DAYS } from "../constants.ts";

/** First hour of each month of the year, and of the year after: 13 hour indices, 0 to 8760. */
export const MONTH_FIRST_HOURS: readonly number[] = MONTH_DAYS.reduce<number[]>(
  (starts, days) => [...starts, starts.at(-1)! + days * 24],
  [0],
);

/** First day of each month of the year, and of the year after: 13 day indices, 0 to 365. */
export const MONTH_FIRST_DAYS: readonly number[] = MONTH_FIRST_HOURS.map((hour) => hour / 24);

/** Hour index of 1 July 00:00, the turn of the growing year. */
export const FIRST_OF_JULY: number = MONTH_FIRST_HOURS[6]!;

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

/** Three-letter names of the months. */
export const MONTH_ABBREVIATIONS: readonly string[] = MONTH_NAMES.map((name) => name.slice(0, 3));

const MONTHS = Uint8Array.from(
  { length: HOURS_PER_YEAR },
  (_, hour) => MONTH_FIRST_HOURS.findLastIndex((start) => start <= hour),
);

/**
 * Month of an hour of the year.
 *
 * @param hour whole hour index, 0 to 8759
 * @returns 0 to 11
 */
export function monthOfHour(hour: number): number {
  return MONTHS[hour]!;
}

/**
 * An hour of the year as "3 March 14:00".
 *
 * @param hour whole hour index, 0 to 8759
 */
export function describeHour(hour: number): string {
  const month = monthOfHour(hour);
  const within = hour - MONTH_FIRST_HOURS[month]!;
  const clock = String(within % 24).padStart(2, "0");
  return `${Math.floor(within / 24) + 1} ${MONTH_NAMES[month]} ${clock}:00`;
}
