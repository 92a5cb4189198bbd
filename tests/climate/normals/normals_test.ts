import { dailyMeans } from "../../../lib/basics/mod.ts";
import { assert, assertAlmostEquals, assertEquals, assertThrows } from "@std/assert";
import { InputError } from "winterground/basics/mod.ts";
import {
  meanDailySwing,
  normalsOfYear,
  readNormals,
  summariseClimate,
  yearFromNormals,
} from "winterground/climate/mod.ts";
import { saturationPressure, saturationPressureOverWater } from "winterground/air/mod.ts";
import { MONTH_DAYS } from "winterground/basics/mod.ts";
import normalsText from "../../../data/climates/aldersett_normals.csv" with { type: "text" };
import { NORMALS, sampleYear, SERIES } from "../sample.ts";

Deno.test("yearFromNormals() keeps the monthly means it was given", () => {
  // Property: temperature, radiation, wind and humidity to rounding, daily swing to 0.05 K
  for (const seed of [1, 77]) {
    const year = sampleYear(seed);
    const { months } = summariseClimate(year);
    const swing = meanDailySwing(year.dryBulb);
    months.forEach((month, index) => {
      assertAlmostEquals(month.meanTemperature, NORMALS.meanTemperature[index]!, 1e-9);
      const radiation = NORMALS.globalRadiation[index]! * MONTH_DAYS[index]!;
      assertAlmostEquals(month.globalRadiation, radiation, 1e-6 * radiation);
      assertAlmostEquals(month.meanWindSpeed, NORMALS.windSpeed[index]!, 1e-9);
      assertAlmostEquals(month.meanRelativeHumidity, NORMALS.relativeHumidity[index]!, 1e-4);
      const wanted = NORMALS.meanDailyMaximum[index]! - NORMALS.meanDailyMinimum[index]!;
      assertAlmostEquals(swing[index]!, wanted, 0.05);
    });
  }
});

Deno.test("yearFromNormals() gives the same year for a seed and another for another", () => {
  // Property: deterministic
  const [one, again] = [sampleYear(5), sampleYear(5)];
  for (const name of SERIES) assertEquals(one[name], again[name], name);
  assert(one.dryBulb[100] !== sampleYear(6).dryBulb[100]);
});

Deno.test("yearFromNormals() has the memory and spread it was given, over many winters", () => {
  // Property: spread of daily means within January as given, over 12 seeds, to twice its standard error
  // (8 %); days after each other go together as φ 0.7 or more
  let [squares, products] = [0, 0];
  for (let seed = 1; seed <= 12; seed++) {
    const days = dailyMeans(sampleYear(seed).dryBulb).subarray(0, 31);
    const mean = days.reduce((sum, day) => sum + day, 0) / 31;
    for (let day = 0; day < 31; day++) squares += (days[day]! - mean) ** 2;
    for (let day = 1; day < 31; day++) products += (days[day]! - mean) * (days[day - 1]! - mean);
  }
  const spread = Math.sqrt(squares / 372);
  assertAlmostEquals(spread / NORMALS.dayToDaySpread[0]!, 1, 0.16);
  const memory = products / squares * 31 / 30;
  assert(memory > 0.6 && memory < 0.9, `memory ${memory}`);
});

/** Daily departures from the month's mean over a January, of a series or of the light. */
function january(series: Float64Array): number[] {
  const days = dailyMeans(series).subarray(0, 31);
  const mean = days.reduce((sum, day) => sum + day, 0) / 31;
  return Array.from(days, (day) => day - mean);
}

function correlation(pairs: readonly (readonly [number, number])[]): number {
  const sum = (of: (pair: readonly [number, number]) => number) =>
    pairs.reduce((total, pair) => total + of(pair), 0);
  return sum(([a, b]) => a * b) / Math.sqrt(sum(([a]) => a * a) * sum(([, b]) => b * b));
}

Deno.test("clear January days are cold ones, and no seed shares its draws with another", () => {
  // Property: correlation of light and temperature of one year as typical years show it, -0.35; of the
  // temperature of a seed with the light of the seeds after it none, where shared draws gave 0.58
  const years = Array.from({ length: 24 }, (_, place) => sampleYear(place + 1));
  const light = years.map((year) => january(year.globalHorizontal));
  const air = years.map((year) => january(year.dryBulb));
  const together = (shift: number) =>
    correlation(
      air.slice(0, 24 - shift).flatMap((days, place) =>
        days.map((value, day) => [value, light[place + shift]![day]!] as const)
      ),
    );
  assertAlmostEquals(together(0), -0.35, 0.15);
  for (const shift of [1, 2, 3, 4, 5, 6]) assertAlmostEquals(together(shift), 0, 0.2);
});

Deno.test("a generated year holds nothing that cannot be", () => {
  // Property: parts close, no light at night, humidity below saturation over ice, winds above 0
  const year = sampleYear(9);
  year.globalHorizontal.forEach((global, hour) => {
    assert(global >= 0 && year.diffuseHorizontal[hour]! >= -1e-9 && year.directNormal[hour]! >= 0);
    assert(year.directNormal[hour]! < 1250, `direct ${year.directNormal[hour]}`);
    const temperature = year.dryBulb[hour]!;
    const highest = Math.min(
      1,
      saturationPressure(temperature) / saturationPressureOverWater(temperature),
    );
    assert(year.relativeHumidity[hour]! <= highest + 1e-12);
    assert(year.windSpeed[hour]! >= 0);
  });
  const night = year.globalHorizontal.filter((_, hour) => hour % 24 === 0);
  assert(night.every((value) => value === 0));
});

Deno.test("the demo place has cold nights near -35 degC", () => {
  // Property: over eleven invented years the coldest hours lie about -34 degC
  const coldest = Array.from(
    { length: 20 },
    (_, seed) => Math.min(...sampleYear(seed + 1).dryBulb),
  );
  coldest.sort((a, b) => a - b);
  assert(coldest[5]! < -30 && coldest[5]! > -38, String(coldest));
});

Deno.test("normals with faults are refused with line and column", () => {
  // Property: nothing is guessed
  const lines = normalsText.trim().split("\n");
  const change = (line: number, from: string, to: string) =>
    lines.map((text, index) => index === line ? text.replace(from, to) : text).join("\n");
  const cases: [text: string, words: RegExp][] = [
    [change(3, "-6.2", "cold"), /n\.csv:4 \(column "mean_temperature_degC"\)/],
    [change(7, "19.0", "29.0"), /n\.csv:8.*lowest < mean < highest/],
    [lines.slice(0, 12).join("\n"), /expected a header line and 12 months, found 12 lines/],
    [change(0, "wind_speed_m_per_s", "wind"), /missing columns wind_speed_m_per_s/],
    [change(2, "2,", "3,"), /expected month 2, found 3/],
    ["", /n\.csv:1/],
  ];
  for (const [text, words] of cases) {
    const error = assertThrows(() => readNormals(text, "n.csv"), InputError);
    assert(words.test(error.message), error.message);
  }
});

Deno.test("yearFromNormals() keeps months without any radiation dark and finite", () => {
  // Property: nothing divided by nothing
  const dark = {
    ...NORMALS,
    globalRadiation: NORMALS.globalRadiation.map((v, m) => m === 0 ? 0 : v),
  };
  const place = { name: "dark", latitude: 49, longitude: -101, elevation: 500, timeZone: -6 };
  const year = yearFromNormals(dark, place, 3);
  for (const name of SERIES) assert(year[name].every(Number.isFinite), name);
  assert(year.globalHorizontal.subarray(0, 744).every((value) => value === 0));
});

Deno.test("published deviations of monthly means are read where the table has them", () => {
  // Property: as written; refused out of range, with line and column
  const withColumn = (value: string) =>
    normalsText.trim().split("\n").map((line, index) =>
      `${line},${index === 0 ? "month_to_month_spread_K" : value}`
    ).join("\n");
  assertEquals(NORMALS.monthToMonthSpread, undefined);
  assertEquals(readNormals(withColumn("2.5"), "n.csv").monthToMonthSpread, Array(12).fill(2.5));
  const error = assertThrows(() => readNormals(withColumn("wide"), "n.csv"), InputError);
  assert(/n\.csv:2.*"month_to_month_spread_K"/.test(error.message), error.message);
});

Deno.test("normalsOfYear() finds again what a year was made from", () => {
  // Property: means to rounding, swing to 0.05 K, spread within months to what one year tells
  const found = normalsOfYear(sampleYear(2));
  NORMALS.meanTemperature.forEach((mean, month) => {
    assertAlmostEquals(found.meanTemperature[month]!, mean, 1e-9);
    assertAlmostEquals(found.globalRadiation[month]!, NORMALS.globalRadiation[month]!, 1e-6);
    assertAlmostEquals(found.windSpeed[month]!, NORMALS.windSpeed[month]!, 1e-9);
    assertAlmostEquals(found.relativeHumidity[month]!, NORMALS.relativeHumidity[month]!, 1e-4);
    const swing = found.meanDailyMaximum[month]! - found.meanDailyMinimum[month]!;
    const wanted = NORMALS.meanDailyMaximum[month]! - NORMALS.meanDailyMinimum[month]!;
    assertAlmostEquals(swing, wanted, 0.05);
  });
  const ratio = found.dayToDaySpread.reduce(
    (sum, value, month) => sum + value / NORMALS.dayToDaySpread[month]! / 12,
    0,
  );
  assertAlmostEquals(ratio, 1, 0.13);
});
