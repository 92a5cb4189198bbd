import { dailyMeans, MONTH_FIRST_HOURS, monthOfHour } from "../../lib/basics/mod.ts";
import { assert, assertAlmostEquals } from "@std/assert";
import {
  type ClimateYear,
  meanDailySwing,
  type MonthlyNormals,
  readClimate,
  summariseClimate,
  yearFromNormals,
} from "winterground/climate/mod.ts";
import { MONTH_DAYS } from "winterground/basics/mod.ts";

const OPEN_DATA = Deno.env.get("OPEN_DATA");
const ignore = OPEN_DATA === undefined;
const SKIPPED = ignore ? " (skipped: OPEN_DATA is not set)" : "";
const FILES = [
  "tmy3_nd_fargo.csv",
  "tmy3_mn_international_falls.csv",
  "tmy3_mt_wolf_point_fort_peck.csv",
];
/** Single years scatter by some 3 K; forty are enough for the mean. */
const SEEDS = Array.from({ length: 40 }, (_, place) => place + 1);

/** Twelve normals of a published year. */
function normalsOf(year: ClimateYear): MonthlyNormals {
  const { months } = summariseClimate(year);
  const days = dailyMeans(year.dryBulb);
  const swing = meanDailySwing(year.dryBulb);
  const spread = months.map((month, index) => {
    const part = days.subarray(MONTH_FIRST_HOURS[index]! / 24, MONTH_FIRST_HOURS[index + 1]! / 24);
    return Math.sqrt(
      part.reduce((sum, day) => sum + (day - month.meanTemperature) ** 2, 0) / part.length,
    );
  });
  return {
    meanTemperature: months.map((month) => month.meanTemperature),
    meanDailyMaximum: months.map((month, index) => month.meanTemperature + swing[index]! / 2),
    meanDailyMinimum: months.map((month, index) => month.meanTemperature - swing[index]! / 2),
    relativeHumidity: months.map((month) => month.meanRelativeHumidity),
    globalRadiation: months.map((month, index) => month.globalRadiation / MONTH_DAYS[index]!),
    windSpeed: months.map((month) => month.meanWindSpeed),
    dayToDaySpread: spread,
  };
}

function read(file: string): ClimateYear {
  return readClimate(Deno.readTextFileSync(`${OPEN_DATA}/climate/${file}`), { file });
}

const mean = (values: readonly number[]) => values.reduce((a, b) => a + b, 0) / values.length;

for (const file of FILES) {
  Deno.test({
    name:
      `years made from the normals of ${file} have its degree-days, design temperature and diffuse light (NREL TMY3)` +
      SKIPPED,
    ignore,
    fn() {
      // Source: the published year its normals are taken from. Degree-days within 2 % as they follow from
      // the means; the 99.6 % temperature, which single spells decide, within 3 K on the mean of forty
      // years; the diffuse light, which the split alone decides, within 15 %
      const published = read(file);
      const want = summariseClimate(published);
      const made = SEEDS.map((seed) =>
        yearFromNormals(normalsOf(published), published.place, seed)
      );
      const have = made.map(summariseClimate);
      const over = (figure: (result: typeof want) => number) => mean(have.map(figure));
      assertAlmostEquals(over((r) => r.heatingDegreeDays18) / want.heatingDegreeDays18, 1, 0.02);
      assertAlmostEquals(over((r) => r.design99_6), want.design99_6, 3);
      const diffuse = (year: ClimateYear) => year.diffuseHorizontal.reduce((a, b) => a + b, 0);
      assertAlmostEquals(mean(made.map(diffuse)) / diffuse(published), 1, 0.15);
    },
  });

  Deno.test({
    name:
      `the daily radiation of years made from the normals of ${file} scatters like the published year's (NREL TMY3)` +
      SKIPPED,
    ignore,
    fn() {
      // Source: the published year; standard deviation of daily sums about their month's mean,
      // which the distribution of Bendt et al. 1981 [bendt-1981] and Hollands & Huget 1983
      // [hollands-huget-1983] gives; within 20 %
      const published = read(file);
      const wanted = scatter(published);
      const made = SEEDS.map((seed) =>
        scatter(yearFromNormals(normalsOf(published), published.place, seed))
      );
      assertAlmostEquals(mean(made) / wanted, 1, 0.2);
      assert(made.every((one) => one > 0.6 * wanted), String(made));
    },
  });
}

/** Scatter of daily radiation about the mean of its month, W/m². */
function scatter(year: ClimateYear): number {
  const days = dailyMeans(year.globalHorizontal);
  const { months } = summariseClimate(year);
  const squares = days.reduce((sum, day, index) => {
    const month = monthOfHour(index * 24);
    return sum + (day - months[month]!.globalRadiation * 1000 / MONTH_DAYS[month]! / 24) ** 2;
  }, 0);
  return Math.sqrt(squares / days.length);
}
