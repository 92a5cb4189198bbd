import { assert, assertAlmostEquals, assertEquals } from "@std/assert";
import {
  coldestRun,
  durationCurve,
  exceededIn,
  firstHourBelow,
  hoursBelow,
  lastHourBelow,
  monthlyHeat,
} from "../../lib/house/mod.ts";

const wave = Float64Array.from(
  { length: 8760 },
  (_, hour) => 5 - 15 * Math.cos(2 * Math.PI * hour / 8760),
);

Deno.test("firstHourBelow() and lastHourBelow() bracket the cold season across the new year", () => {
  // Property: between last and first hour below the limit nothing is below it.
  const first = firstHourBelow(wave, 0)!;
  const last = lastHourBelow(wave, 0)!;
  assert(first > 181 * 24 && last < 181 * 24);
  assert(wave.slice(last + 1, first).every((value) => value >= 0));
  assert(wave[first]! < 0 && wave[last]! < 0);
  assertEquals(firstHourBelow(wave, -50), null);
  assertEquals(lastHourBelow(wave, -50), null);
});

Deno.test("exceededIn(), hoursBelow() and durationCurve() agree about the same year", () => {
  // Property: a value exceeded in 99.6 % of the hours has 0.4 % of them below.
  const design = exceededIn(wave, 0.996);
  assertAlmostEquals(hoursBelow(wave, design) / 8760, 0.004, 1 / 8760);
  const curve = durationCurve(wave, 101);
  assertEquals(curve.length, 101);
  assertAlmostEquals(curve[0]!.value, 20, 1e-5);
  assertAlmostEquals(curve[100]!.value, -10, 1e-9);
  assert(curve.every((point, i) => i === 0 || point.value <= curve[i - 1]!.value));
});

Deno.test("coldestRun() finds the week around the coldest hour, over the year's end", () => {
  // Property: the wave is lowest at hour 0, so its coldest week is centred there.
  const start = coldestRun(wave, 168);
  const middle = (start + 84) % 8760;
  assert(middle <= 1 || middle >= 8759, `${start}`);
});

Deno.test("monthlyHeat() adds up to the year", () => {
  // Property: 1 kW all year is 8760 kWh; January 744.
  const months = monthlyHeat(new Float64Array(8760).fill(1000));
  assertAlmostEquals(months[0]!, 744, 1e-9);
  assertAlmostEquals(months.reduce((sum, value) => sum + value, 0), 8760, 1e-9);
});

Deno.test("the first freeze is looked for from 1 July, the last before the next", () => {
  // Property: days by hand: 31 + 28 + 31 + 30 + 31 + 30 = 181 days lie before 1 July
  const series = new Float64Array(8760).fill(5);
  series[180 * 24 + 23] = -1;
  assertEquals(firstHourBelow(series, 0), 180 * 24 + 23);
  assertEquals(lastHourBelow(series, 0), 180 * 24 + 23);
  series[190 * 24] = -1;
  series[360 * 24] = -1;
  assertEquals(firstHourBelow(series, 0), 190 * 24);
  series[190 * 24] = 5;
  assertEquals(firstHourBelow(series, 0), 360 * 24);
});
