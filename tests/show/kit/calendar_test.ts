import { assertAlmostEquals, assertEquals } from "@std/assert";
import {
  dayName,
  hourName,
  monthlySums,
  monthOfHour,
  MONTHS,
} from "../../../lib/show/kit/calendar.ts";

Deno.test("every day of a 365-day year has the name the Gregorian calendar gives it", () => {
  // Source: the calendar as Date (ECMAScript) has it, year 2001 without a leap day
  for (let day = 0; day < 365; day++) {
    const date = new Date(Date.UTC(2001, 0, 1 + day));
    assertEquals(dayName(day), `${date.getUTCDate()} ${MONTHS[date.getUTCMonth()]}`);
    assertEquals(monthOfHour(day * 24 + 23), date.getUTCMonth());
  }
  assertEquals(hourName(31 * 24 + 5), "1 Feb 05:00");
});

Deno.test("monthlySums() loses no hour", () => {
  // Property: the sum of the months is the sum of the year
  const series = Float64Array.from({ length: 8760 }, (_, hour) => Math.sin(hour) + 1);
  const whole = series.reduce((a, b) => a + b, 0);
  assertAlmostEquals(monthlySums(series).reduce((a, b) => a + b, 0), whole, 1e-6);
});
