import { hoursBelow } from "../../lib/basics/mod.ts";
import { assert, assertAlmostEquals, assertEquals } from "@std/assert";
import {
  coldSpells,
  compareClimates,
  degreeDaysBelow,
  degreeHoursBelow,
  groundAlbedo,
  longestColdDarkRun,
  summariseClimate,
} from "winterground/climate/mod.ts";
import { sampleYear, withSeries } from "./sample.ts";

const YEAR = sampleYear(2);

Deno.test("summariseClimate() agrees with sums and ranks made by hand", () => {
  // Property: months add up to the year; 35 of 8760 hours lie below the 99.6 % temperature, 87 below 99 %
  const result = summariseClimate(YEAR);
  const sum = result.months.reduce((total, month) => total + month.globalRadiation, 0);
  assertAlmostEquals(sum, result.globalRadiation, 1e-9 * sum);
  const days = result.months.reduce((total, month) => total + month.heatingDegreeDays18, 0);
  assertAlmostEquals(days, result.heatingDegreeDays18, 1e-9 * days);
  assertEquals(Math.min(...result.months.map((month) => month.minTemperature)), result.coldestHour);
  assertEquals(Math.max(...result.months.map((month) => month.maxTemperature)), result.warmestHour);
  const [january, february] = result.months.map((month) => month.globalRadiation);
  const december = result.months.at(-1)!.globalRadiation;
  assertAlmostEquals(result.winterRadiation, january! + february! + december, 1e-9);
  assert(result.summerRadiation > result.winterRadiation);
  for (const { limit, hours } of result.hoursBelow) {
    assertEquals(hours, hoursBelow(YEAR.dryBulb, limit));
    assert(hours > 0 && hours < 8760);
  }
  assertEquals(hoursBelow(YEAR.dryBulb, result.design99_6), 36);
  assertEquals(hoursBelow(YEAR.dryBulb, result.design99), 88);
});

Deno.test("degree-days and degree-hours of a made-up year are exact", () => {
  // Property: half the day at 0 and half at 20 degC
  const steps = YEAR.dryBulb.map((_, hour) => hour % 24 < 12 ? 0 : 20);
  assertAlmostEquals(degreeDaysBelow(steps, 18), 365 * 8, 1e-9);
  assertAlmostEquals(degreeHoursBelow(steps, 18), 365 * 12 * 18, 1e-9);
  assertEquals(hoursBelow(steps, 0.5), 365 * 12);
});

Deno.test("the worst spell is the one put in", () => {
  // Property: seven dark days 20 K colder than the rest are found, whole and alone
  const worse = withSeries(
    withSeries(YEAR, ["dryBulb"], (value, hour) => value - (hour >= 480 && hour < 648 ? 20 : 0)),
    ["globalHorizontal"],
    (value, hour) => hour >= 480 && hour < 648 ? 0.1 * value : value,
  );
  const spell = coldSpells(worse, 7);
  assertEquals([spell.startDay, spell.length], [20, 7]);
  assert(spell.globalRadiation < 0.3 && spell.meanTemperature < -30);
  assert(spell.minTemperature <= spell.meanTemperature);
  const run = longestColdDarkRun(worse, { temperature: -20, radiation: 0.4 });
  assert(
    run.startDay >= 20 && run.startDay + run.length <= 27 && run.length >= 4,
    JSON.stringify(run),
  );
  assertEquals(longestColdDarkRun(YEAR, { temperature: -80, radiation: 9 }).length, 0);
  // 100 W/m² all day are 2.4 kWh/m²
  const even = withSeries(YEAR, ["globalHorizontal"], () => 100);
  assertAlmostEquals(coldSpells(even, 3).globalRadiation, 2.4, 1e-9);
  assertAlmostEquals(summariseClimate(even).globalRadiation, 876, 1e-9);
});

Deno.test("longer spells are never worse on the mean than shorter ones", () => {
  // Property: the worst day is the lower bound of every mean of days
  const load = [1, 3, 7, 14].map((days) => {
    const spell = coldSpells(YEAR, days);
    return spell.meanTemperature + 0.1 * spell.globalRadiation * 1000 / 24;
  });
  for (let index = 1; index < 4; index++) assert(load[index]! >= load[index - 1]! - 1e-9);
});

Deno.test("compareClimates() of a year with itself finds no difference, and a warmer one in full", () => {
  // Property: second less first
  for (const row of compareClimates(YEAR, YEAR)) assertEquals(row.difference, 0, row.label);
  const warmer = withSeries(YEAR, ["dryBulb"], (value) => value + 2);
  const rows = compareClimates(YEAR, warmer);
  for (const label of ["Mean temperature", "Coldest hour"]) {
    assertAlmostEquals(rows.find((row) => row.label === label)!.difference, 2, 1e-9);
  }
});

Deno.test("groundAlbedo() has snow in the cold months and none in summer, and the file's where it has one", () => {
  // Property: limits of the rule
  const albedo = groundAlbedo(YEAR);
  assertAlmostEquals(albedo[10]!, 0.6, 1e-12);
  assertAlmostEquals(albedo[4500]!, 0.2, 1e-12);
  const given = new Float64Array(8760).fill(0.3);
  assertEquals(groundAlbedo({ ...YEAR, albedo: given }), given);
});
