/** Which part of the made-up year the demo's logs hold: 1 November to 31 March. @module */
import { DAY, MONTH_FIRST_DAYS } from "../../basics/mod.ts";
import { DEMO_PLACES } from "./instruments.ts";
import { PLANTED } from "./planted.ts";
import type { WinterSetting } from "./winter_rows.ts";

/** Days after 1 January at which the log begins, and its length in days. */
const FIRST_DAY = MONTH_FIRST_DAYS[10]!;
const DAYS = 151;
/** Year in which the demo's log begins. */
export const DEMO_YEAR = 2025;

/** What the true year is asked for: the places of the sensors and the hours of the log. */
export const DEMO_HOURS = { ...DEMO_PLACES, fromHour: 24 * FIRST_DAY, hours: 24 * DAYS + 3 };

/**
 * Setting of the demo's logs, with its planted faults.
 *
 * @param timeZone h from UTC
 * @param seed whole number that every error hangs on
 */
export function demoSetting(timeZone: number, seed: number): WinterSetting {
  return {
    from: FIRST_DAY * DAY,
    lasts: DAYS * DAY,
    start: Date.UTC(DEMO_YEAR, 10, 1) / 1000 - 3600 * timeZone,
    seed,
    faults: PLANTED,
  };
}
