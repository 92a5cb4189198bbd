import { assertEquals } from "@std/assert";
import { dayName, hourName, MONTHS } from "../../../lib/show/kit/calendar.ts";

Deno.test("every day of a 365-day year has the name the Gregorian calendar gives it", () => {
  // Source: the calendar as Date (ECMAScript) has it, year 2001 without a leap day
  for (let day = 0; day < 365; day++) {
    const date = new Date(Date.UTC(2001, 0, 1 + day));
    assertEquals(dayName(day), `${date.getUTCDate()} ${MONTHS[date.getUTCMonth()]}`);
  }
  assertEquals(hourName(31 * 24 + 5), "1 Feb 05:00");
});
