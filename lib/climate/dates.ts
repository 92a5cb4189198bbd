/** Dates of a typical year. @module */
import { FIRST_OF_JULY, HOUR, HOURS_PER_YEAR } from "../basics/mod.ts";

/** A year of 365 days that stands for the typical year. */
const STAND_IN_YEAR = 2001;

/** `2001-10-03T04:00`, local standard time, for an hour index of the year. */
export function timeOfHour(hour: number): string {
  return new Date(Date.UTC(STAND_IN_YEAR, 0, 1) + hour * HOUR * 1000).toISOString().slice(0, 16);
}

/** `2001-10-03` for an hour index of the year. */
function dateOfHour(hour: number): string {
  return timeOfHour(hour).slice(0, 10);
}

/**
 * Date of an hour of the winter that follows midsummer: January after it is January of the next
 * year, so that dates of one winter stand in order.
 *
 * @example
 * ```ts
 * import { assertEquals } from "@std/assert";
 * import { dateAfterMidsummer } from "./dates.ts";
 *
 * assertEquals(dateAfterMidsummer(275 * 24), "2001-10-03");
 * assertEquals(dateAfterMidsummer(10 * 24), "2002-01-11");
 * ```
 *
 * @param hour hour index of the year, 0 to 8759
 */
export function dateAfterMidsummer(hour: number): string {
  return dateOfHour(hour < FIRST_OF_JULY ? hour + HOURS_PER_YEAR : hour);
}
