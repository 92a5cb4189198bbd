// Property: many winters meet the normals, one does not; nothing hangs on how many are made
import { assert, assertAlmostEquals, assertEquals } from "@std/assert";
import { deviation, mean } from "d3-array";
import { dailyMeans, monthlyMeans } from "../../../lib/basics/mod.ts";
import { shareBetweenMonths } from "../../../lib/climate/winters/memory.ts";
import { makeWinter, winterClimate } from "../../../lib/climate/winters/mod.ts";
import { drawDays } from "../../../lib/climate/winters/winter.ts";
import { winterTemperature } from "../../../lib/climate/winters/temperature.ts";
import { meanDailySwing } from "winterground/climate/mod.ts";
import { ALDERSETT, NORMALS, SERIES } from "../sample.ts";

const climate = winterClimate(NORMALS, ALDERSETT);
const WINTERS = 300;
const temperatures = Array.from(
  { length: WINTERS },
  (_, winter) =>
    winterTemperature(climate.temperature, drawDays({ seed: 11, winter }, climate.slowShare)),
);
const years = Array.from({ length: 40 }, (_, winter) => makeWinter(climate, { seed: 11, winter }));

Deno.test("ensemble means of each month are the normals within three standard errors", () => {
  const months = temperatures.map((one) => monthlyMeans(one));
  NORMALS.meanTemperature.forEach((wanted, month) => {
    const of = months.map((one) => one[month]!);
    const error = deviation(of)! / Math.sqrt(WINTERS);
    assert(Math.abs(mean(of)! - wanted) < 3 * error, `month ${month + 1}: ${mean(of)} ${wanted}`);
  });
});

Deno.test("monthly means vary between winters by half the spread within months", () => {
  const between = Math.sqrt(shareBetweenMonths(0.2) / ((1 - shareBetweenMonths(0.2)) * 31 / 30));
  const months = temperatures.map((one) => monthlyMeans(one));
  const ratios = NORMALS.dayToDaySpread.map((within, month) =>
    deviation(months.map((one) => one[month]!))! / within
  );
  assertAlmostEquals(mean(ratios)! / between, 1, 0.08);
});

Deno.test("the spread of daily means within a month is the one that the normals give", () => {
  const ratio = [0, 6].map((month) => {
    const from = month === 0 ? 0 : 181;
    const variances = temperatures.map((one) =>
      deviation(dailyMeans(one).subarray(from, from + 31))! ** 2
    );
    return Math.sqrt(mean(variances)!) / NORMALS.dayToDaySpread[month]!;
  });
  for (const one of ratio) assertAlmostEquals(one, 1, 0.1);
});

Deno.test("the daily swing of all winters is the one that the normals give", () => {
  const made = temperatures.slice(0, 60).map(meanDailySwing);
  NORMALS.meanDailyMaximum.forEach((high, month) => {
    const wanted = high - NORMALS.meanDailyMinimum[month]!;
    assertAlmostEquals(mean(made, (one) => one[month]!)! / wanted, 1, 0.08);
  });
});

Deno.test("light of all winters is that of the normals; single winters differ", () => {
  const sums = years.map((year) =>
    mean(monthlyMeans(year.globalHorizontal).slice(0, 3).map((value) => value * 24 / 1000))!
  );
  const wanted = mean(NORMALS.globalRadiation.slice(0, 3))!;
  assertAlmostEquals(mean(sums)! / wanted, 1, 0.04);
  assert(deviation(sums)! / wanted > 0.02);
});

Deno.test("clear winter days are cold ones", () => {
  // r about -0.33 in December to February: typical years show -0.23 to -0.61
  const pairs = years.flatMap((year) => {
    const light = dailyMeans(year.globalHorizontal);
    const outside = dailyMeans(climate.outside);
    const air = dailyMeans(year.dryBulb);
    const days = [
      ...Array.from({ length: 59 }, (_, day) => day),
      ...Array.from({ length: 31 }, (_, day) => 334 + day),
    ];
    const season = dailyMeans(climate.temperature.season);
    return days.map((day) => [light[day]! / outside[day]!, air[day]! - season[day]!] as const);
  });
  const [one, other] = [0, 1].map((place) => {
    const values = pairs.map((pair) => pair[place]!);
    const [middle, spread] = [mean(values)!, deviation(values)!];
    return values.map((value) => (value - middle) / spread);
  });
  const together = mean(one!, (value, index) => value * other![index]!)!;
  assert(together < -0.22 && together > -0.45, `correlation ${together}`);
});

Deno.test("a winter runs on through New Year and breaks in summer", () => {
  // the step across midnight is no larger than others there; at the end of June it is anything
  const step = (at: number) =>
    mean(
      temperatures,
      (one) => Math.abs(one[(at + 8760) % 8760]! - one[at - 1 < 0 ? 8759 : at - 1]!),
    )!;
  assert(step(0) < 1.5 * step(24) + 0.1, `${step(0)} against ${step(24)}`);
  assert(step(181 * 24) > 2 * step(180 * 24));
});

Deno.test("a winter is the same whatever others are made, and no two are alike", () => {
  const again = makeWinter(winterClimate(NORMALS, ALDERSETT), { seed: 11, winter: 3 });
  for (const name of SERIES) assertEquals(again[name], years[3]![name], name);
  assert(years[3]!.dryBulb[100] !== years[4]!.dryBulb[100]);
  assert(makeWinter(climate, { seed: 12, winter: 3 }).dryBulb[100] !== years[3]!.dryBulb[100]);
});

Deno.test("a made winter holds nothing that cannot be", () => {
  for (const year of years.slice(0, 5)) {
    year.globalHorizontal.forEach((global, hour) => {
      assert(global >= 0 && year.diffuseHorizontal[hour]! >= -1e-9);
      assert(year.directNormal[hour]! >= 0 && year.windSpeed[hour]! >= 0);
      const humidity = year.relativeHumidity[hour]!;
      assert(humidity > 0 && humidity <= 1);
    });
  }
});
