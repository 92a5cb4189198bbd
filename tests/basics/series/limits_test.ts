import { assert, assertEquals } from "@std/assert";
import {
  degreeHoursBelow,
  firstHourBelow,
  hoursBelow,
  lastHourBelow,
  longestSpellBelow,
  lowestRunStart,
  yearBelow,
} from "../../../lib/basics/mod.ts";

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

Deno.test("hoursBelow() counts what lies below, not what lies at the limit", () => {
  // Property: by hand
  const series = Float64Array.of(-1, 0, 1, -2, Number.NaN);
  assertEquals(hoursBelow(series, 0), 2);
  assertEquals(hoursBelow(series, -2), 0);
  assertEquals(hoursBelow(new Float64Array(0), 5), 0);
});

Deno.test("lowestRunStart() finds the week around the coldest hour, over the year's end", () => {
  // Property: the wave is lowest at hour 0, so its coldest week is centred there.
  const start = lowestRunStart(wave, 168);
  const middle = (start + 84) % 8760;
  assert(middle <= 1 || middle >= 8759, `${start}`);
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

Deno.test("yearBelow() counts a year against a limit as counted by hand", () => {
  // Property: by hand: three hours in March, two over the new year
  const series = new Float64Array(8760).fill(5);
  for (const hour of [1500, 1501, 1502]) series[hour] = -2;
  series[8759] = -1;
  series[0] = -4;
  assertEquals(yearBelow(series, 0), {
    limit: 0,
    hours: 5,
    degreeHours: 11,
    first: 8759,
    last: 1502,
    longestSpell: 3,
  });
  assertEquals(longestSpellBelow(series.map((value) => value === -2 ? 5 : value), 0), 2);
  assertEquals(longestSpellBelow(series, 10), 8760);
  assertEquals(degreeHoursBelow(series, -1), 6);
});
