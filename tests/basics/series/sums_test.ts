import { assertAlmostEquals, assertEquals } from "@std/assert";
import fc from "fast-check";
import {
  dailyMeans,
  hoursOfMonth,
  monthlyHeat,
  monthlyMeans,
  monthlyMeansOfDays,
  monthlySums,
} from "../../../lib/basics/mod.ts";

const year = Float64Array.from({ length: 8760 }, (_, hour) => Math.sin(hour) + hour / 1000);
const added = (values: Iterable<number>) => [...values].reduce((sum, value) => sum + value, 0);

Deno.test("monthlyHeat() adds up to the year", () => {
  // Property: 1 kW all year is 8760 kWh; January 744.
  const months = monthlyHeat(new Float64Array(8760).fill(1000));
  assertAlmostEquals(months[0]!, 744, 1e-9);
  assertAlmostEquals(added(months), 8760, 1e-9);
});

Deno.test("sums by month lose no hour, and means are sums over hours", () => {
  // Property: the months together are the year, whatever the series
  const sums = monthlySums(year);
  const means = monthlyMeans(year);
  assertAlmostEquals(added(sums), added(year), 1e-6);
  sums.forEach((sum, month) =>
    assertAlmostEquals(sum / hoursOfMonth(year, month).length, means[month]!, 1e-12)
  );
});

Deno.test("dailyMeans() keeps the sum of whole days and leaves out a broken one", () => {
  // Property: 24 times the means is the sum, for any series
  fc.assert(
    fc.property(
      fc.array(fc.double({ min: -60, max: 1200, noNaN: true }), { maxLength: 200 }),
      (values) => {
        const means = dailyMeans(Float64Array.from(values));
        const whole = values.slice(0, Math.floor(values.length / 24) * 24);
        assertEquals(means.length, whole.length / 24);
        assertAlmostEquals(24 * added(means), added(whole), 1e-7);
      },
    ),
  );
});

Deno.test("monthlyMeansOfDays() puts 29 February into February", () => {
  // Property: a mark on one day is seen in its own month alone, with and without a leap day
  const mark = (length: number, day: number) => {
    const daily = new Float64Array(length);
    daily[day] = 1;
    return monthlyMeansOfDays(daily).map((mean) => mean > 0);
  };
  assertEquals(mark(366, 59).indexOf(true), 1);
  assertEquals(mark(366, 60).indexOf(true), 2);
  assertEquals(mark(365, 59).indexOf(true), 2);
  assertEquals(mark(366, 365).indexOf(true), 11);
  assertEquals(mark(365, 364).indexOf(true), 11);
  assertAlmostEquals(monthlyMeansOfDays(dailyMeans(year))[6]!, monthlyMeans(year)[6]!, 1e-12);
});
