/** Dates and times of rows. @module */
import { MONTH_DAYS } from "../../basics/mod.ts";
import type { Stamp } from "./table.ts";

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
