import { assert, assertEquals } from "@std/assert";
import { dayRanges, weekAroundLowest } from "winterground/basics/mod.ts";

const wavy = Float64Array.from(
  { length: 8760 },
  (_, hour) => 10 * Math.sin(hour / 1400) + 5 * Math.sin(hour / 3.8),
);

Deno.test("dayRanges() keeps the mean between lowest and highest, and every hour in its day", () => {
  // Property: order, and the mean of the days is the mean of the year
  const days = dayRanges(wavy);
  assertEquals(days.length, 365);
  for (const day of days) assert(day.low <= day.mean && day.mean <= day.high);
  const mean = days.reduce((sum, day) => sum + day.mean, 0) / 365;
  const year = wavy.reduce((sum, value) => sum + value, 0) / 8760;
  assert(Math.abs(mean - year) < 1e-9);
  assertEquals(Math.min(...days.map((day) => day.low)), Math.min(...wavy));
});

Deno.test("weekAroundLowest() holds the lowest hour in its fourth day, at the ends of a year too", () => {
  // Property: a midnight, seven whole days inside the series, the lowest hour among them
  const flat = (coldest: number) => new Float64Array(8760).fill(5).fill(-5, coldest, coldest + 1);
  assertEquals(weekAroundLowest(flat(100 * 24 + 5)), 97 * 24);
  assertEquals(weekAroundLowest(flat(3)), 0);
  assertEquals(weekAroundLowest(flat(8759)), 8760 - 168);
});
