/** Dates of a typical year. @module */

/** A year of 365 days that stands for the typical year. */
const STAND_IN_YEAR = 2001;

/** `2001-10-03T04:00`, local standard time, for an hour index of the year. */
export function timeOfHour(hour: number): string {
  return new Date(Date.UTC(STAND_IN_YEAR, 0, 1) + hour * 3_600_000).toISOString().slice(0, 16);
}

/** `2001-10-03` for an hour index of the year. */
export function dateOfHour(hour: number): string {
  return timeOfHour(hour).slice(0, 10);
}
