/** Order of the days of a winter. @module */

/** Day of the calendar year, from 0, on which a winter starts: 1 July. */
export const FIRST_DAY = 181;
/** Days of a winter. */
export const DAYS = 365;

/** Place in the calendar year, from 0, of a day of the winter, counted from 1 July. */
export function calendarDay(winterDay: number): number {
  return (FIRST_DAY + winterDay) % DAYS;
}

/**
 * Daily or hourly values of a winter in the order of the calendar: 1 January first, the break
 * between 30 June and 1 July.
 *
 * @param series from 1 July, `each` values a day
 * @param each count of values a day
 */
export function inCalendarOrder(series: Float64Array, each: number): Float64Array {
  const first = FIRST_DAY * each;
  const calendar = new Float64Array(series.length);
  calendar.set(series.subarray(0, series.length - first), first);
  calendar.set(series.subarray(series.length - first), 0);
  return calendar;
}
