/** Hours of the 365-day year as words and as axis dates. @module */
import {
  HOUR,
  MONTH_ABBREVIATIONS,
  MONTH_DAYS,
  MONTH_FIRST_DAYS,
  monthOfHour,
} from "../../basics/mod.ts";

/** Three-letter month names. */
export const MONTHS: readonly string[] = MONTH_ABBREVIATIONS;

/** Names of the four quarters of the year. */
export const QUARTERS: readonly string[] = ["Jan–Mar", "Apr–Jun", "Jul–Sep", "Oct–Dec"];

/** A moment of the year for a time axis, in a year without a leap day. */
export function axisDate(hour: number): Date {
  return new Date(Date.UTC(2001, 0, 1) + hour * HOUR * 1000);
}

/** "14 Jan" for a day of the year, from 0. */
export function dayName(day: number): string {
  const whole = ((Math.floor(day) % 365) + 365) % 365;
  const month = monthOfHour(whole * 24);
  return `${whole - MONTH_FIRST_DAYS[month]! + 1} ${MONTHS[month]}`;
}

/** "14 Jan 05:00" for an hour of the year. */
export function hourName(hour: number): string {
  const clock = String(Math.floor(hour) % 24).padStart(2, "0");
  return `${dayName(hour / 24)} ${clock}:00`;
}

/** Day of the year in the middle of each month, for ticks and names. */
export const MONTH_MIDDLES: readonly number[] = MONTH_DAYS.map((days, month) =>
  MONTH_FIRST_DAYS[month]! + days / 2
);

/** Axis ticks on the first of each month. */
export function monthTicks(): Date[] {
  return MONTH_DAYS.map((_, month) => axisDate(MONTH_FIRST_DAYS[month]! * 24));
}
