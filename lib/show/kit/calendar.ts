/** Hours of the 365-day year as words and as axis dates. @module */
import { MONTH_DAYS } from "../../basics/mod.ts";

/** Three-letter month names. */
export const MONTHS: readonly string[] = [
  "Jan",
  "Feb",
  "Mar",
  "Apr",
  "May",
  "Jun",
  "Jul",
  "Aug",
  "Sep",
  "Oct",
  "Nov",
  "Dec",
];

/** Names of the four quarters of the year. */
export const QUARTERS: readonly string[] = ["Jan–Mar", "Apr–Jun", "Jul–Sep", "Oct–Dec"];

/** Day of the year, from 0, on which each month starts. */
export const MONTH_STARTS: readonly number[] = MONTH_DAYS.map((_, month) =>
  MONTH_DAYS.slice(0, month).reduce<number>((sum, days) => sum + days, 0)
);

/** Month, 0 to 11, of an hour of the year. */
export function monthOfHour(hour: number): number {
  const day = Math.floor(hour / 24);
  let month = 11;
  while (month > 0 && MONTH_STARTS[month]! > day) month--;
  return month;
}

/** A moment of the year for a time axis, in a year without a leap day. */
export function axisDate(hour: number): Date {
  return new Date(Date.UTC(2001, 0, 1) + hour * 3.6e6);
}

/** "14 Jan" for a day of the year, from 0. */
export function dayName(day: number): string {
  const whole = ((Math.floor(day) % 365) + 365) % 365;
  const month = monthOfHour(whole * 24);
  return `${whole - MONTH_STARTS[month]! + 1} ${MONTHS[month]}`;
}

/** "14 Jan 05:00" for an hour of the year. */
export function hourName(hour: number): string {
  const clock = String(Math.floor(hour) % 24).padStart(2, "0");
  return `${dayName(hour / 24)} ${clock}:00`;
}

/** Sum of an hourly series by month. */
export function monthlySums(series: ArrayLike<number>): number[] {
  const sums = new Array<number>(12).fill(0);
  for (let hour = 0; hour < series.length; hour++) sums[monthOfHour(hour)]! += series[hour]!;
  return sums;
}

/** Day of the year in the middle of each month, for ticks and names. */
export const MONTH_MIDDLES: readonly number[] = MONTH_STARTS.map((start, month) =>
  start + MONTH_DAYS[month]! / 2
);

/** Axis ticks on the first of each month. */
export function monthTicks(): Date[] {
  return MONTH_STARTS.map((start) => axisDate(start * 24));
}
