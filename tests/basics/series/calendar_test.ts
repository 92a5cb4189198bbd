import { assertEquals } from "@std/assert";
import {
  describeHour,
  FIRST_OF_JULY,
  MONTH_DAYS,
  MONTH_FIRST_DAYS,
  MONTH_FIRST_HOURS,
  MONTH_NAMES,
  monthOfHour,
} from "../../../lib/basics/mod.ts";

Deno.test("every hour of a 365-day year lies in the month the Gregorian calendar gives it", () => {
  // Source: the calendar as Date (ECMAScript) has it, year 2001 without a leap day
  for (let hour = 0; hour < 8760; hour++) {
    const date = new Date(Date.UTC(2001, 0, 1, hour));
    assertEquals(monthOfHour(hour), date.getUTCMonth());
    const clock = date.toISOString().slice(11, 16);
    const name = date.toLocaleString("en", { month: "long", timeZone: "UTC" });
    assertEquals(describeHour(hour), `${date.getUTCDate()} ${name} ${clock}`);
    assertEquals(MONTH_NAMES[date.getUTCMonth()], name);
  }
});

Deno.test("months run from their first hour and day to the next month's", () => {
  // Property: twelve months fill the year
  assertEquals([MONTH_FIRST_HOURS.length, MONTH_FIRST_DAYS.length], [13, 13]);
  assertEquals([MONTH_FIRST_HOURS[12], MONTH_FIRST_DAYS[12]], [8760, 365]);
  MONTH_DAYS.forEach((days, month) => {
    assertEquals(MONTH_FIRST_DAYS[month + 1]! - MONTH_FIRST_DAYS[month]!, days);
    assertEquals(MONTH_FIRST_HOURS[month], MONTH_FIRST_DAYS[month]! * 24);
  });
  assertEquals(FIRST_OF_JULY, MONTH_FIRST_HOURS[6]);
});
