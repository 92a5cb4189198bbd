// Source: daily records of Clemson, South Carolina, and Chicago, open data (OPEN_DATA/daily)
import { assert, assertAlmostEquals } from "@std/assert";
import { deviation, mean, rollup } from "d3-array";
import Papa from "papaparse";
import { dailyMeans } from "../../lib/basics/mod.ts";
import type { MonthlyNormals } from "../../lib/climate/types.ts";
import { winterClimate } from "../../lib/climate/winters/mod.ts";
import { winterTemperature } from "../../lib/climate/winters/temperature.ts";
import { drawDays } from "../../lib/climate/winters/winter.ts";

const folder = Deno.env.get("OPEN_DATA");
const ignore = folder === undefined;
const SKIPPED = ignore ? " (skipped: OPEN_DATA is not set)" : "";

/** A day of December to February: place in its winter, and degC. */
interface Day {
  readonly winter: number;
  readonly month: number;
  readonly at: number;
  readonly value: number;
}

const celsius = (fahrenheit: number) => (fahrenheit - 32) / 1.8;
const DAY = 24 * 3600 * 1000;

function dayOf(date: string, value: number): readonly Day[] {
  const [year, month] = date.split("-").map(Number) as [number, number];
  if (month > 2 && month < 12 || !(value > -45 && value < 45)) return [];
  const winter = month === 12 ? year : year - 1;
  return [{
    winter,
    month,
    at: Math.round((Date.parse(date) - Date.UTC(winter, 11, 1)) / DAY),
    value,
  }];
}

async function record(
  file: string,
  of: (row: Record<string, string>) => number,
): Promise<readonly Day[]> {
  const text = await Deno.readTextFile(`${folder}/daily/${file}`);
  return Papa.parse<Record<string, string>>(text.trim(), { header: true }).data
    .flatMap((row) => row.date ? dayOf(row.date, of(row)) : []);
}

/** What is compared: lags 1 to 5 of departures from the months' normals, K of the monthly means. */
function figures(days: readonly Day[]) {
  const normal = rollup(days, (of) => mean(of, ({ value }) => value)!, ({ month }) => month);
  const winters = [...rollup(days, (of) => of, ({ winter }) => winter).values()]
    .filter((of) => of.length > 80);
  const square = mean(winters.flat(), ({ value, month }) => (value - normal.get(month)!) ** 2)!;
  const lags = [1, 2, 3, 4, 5].map((lag) => {
    const products = winters.flatMap((of) => {
      const byDay = new Map(of.map((day) => [day.at, day.value - normal.get(day.month)!]));
      return [...byDay].flatMap(([at, value]) => {
        const later = byDay.get(at + lag);
        return later === undefined ? [] : [value * later];
      });
    });
    return mean(products)! / square;
  });
  const within: number[] = [];
  const months = [12, 1, 2].map((month) => {
    const means = winters.map((of) => {
      const own = of.filter((day) => day.month === month);
      within.push(deviation(own, ({ value }) => value)! ** 2);
      return mean(own, ({ value }) => value)!;
    });
    return deviation(means)!;
  });
  return {
    winters: winters.length,
    lags,
    between: mean(months)!,
    within: Math.sqrt(mean(within)!),
  };
}

/** Winters made with the record's spread within months; the rest is any. */
function made(within: number): readonly Day[] {
  const level = Array(12).fill(0);
  const normals: MonthlyNormals = {
    meanTemperature: level,
    meanDailyMaximum: level.map(() => 5),
    meanDailyMinimum: level.map(() => -5),
    dayToDaySpread: level.map(() => within),
    relativeHumidity: level.map(() => 0.7),
    globalRadiation: level.map(() => 3),
    windSpeed: level.map(() => 3),
  };
  const place = { name: "", latitude: 40, longitude: -85, elevation: 200, timeZone: -5 };
  const climate = winterClimate(normals, place);
  return Array.from({ length: 300 }, (_, winter) => {
    const days = dailyMeans(
      winterTemperature(climate.temperature, drawDays({ seed: 9, winter }, climate.slowShare)),
    );
    return Array.from({ length: 90 }, (_, at): Day => ({
      winter,
      at,
      month: at < 31 ? 12 : at < 62 ? 1 : 2,
      value: days[(334 + at) % 365]!,
    }));
  }).flat();
}

const show = ({ winters, lags, between, within }: ReturnType<typeof figures>) =>
  `${winters} winters, lags ${lags.map((lag) => lag.toFixed(2)).join(" ")}, ` +
  `between ${between.toFixed(2)} K, within ${within.toFixed(2)} K`;

for (
  const [name, file, of] of [
    [
      "Clemson",
      "clemson_sc_1930_2020.csv",
      (row: Record<string, string>) =>
        celsius((parseFloat(row.tmin_degF!) + parseFloat(row.tmax_degF!)) / 2),
    ],
    [
      "Chicago",
      "chicago_2001_2016.csv",
      (row: Record<string, string>) => celsius(parseFloat(row.temp!)),
    ],
  ] as const
) {
  Deno.test({
    name: `memory and spread of winter days: daily record of ${name}, and made winters${SKIPPED}`,
    ignore,
    fn: async (test) => {
      // lags within two standard errors of the record by Bartlett, √((1 + 2 Σ r²)/n) ≈ √(3/n) of n days,
      // and never closer than 0.06; the spread of monthly means within a fifth
      const recorded = figures(await record(file, of));
      const ours = figures(made(recorded.within));
      const shown = `${name}: recorded ${show(recorded)}; made ${show(ours)}`;
      await test.step(shown, () => assert(recorded.winters >= 14));
      const within = Math.max(0.06, 2 * Math.sqrt(3 / (90 * recorded.winters)));
      recorded.lags.forEach((lag, place) =>
        assertAlmostEquals(ours.lags[place]!, lag, within, shown)
      );
      assertAlmostEquals(ours.between / recorded.between, 1, 0.2, shown);
      assertAlmostEquals(ours.within / recorded.within, 1, 0.1, shown);
    },
  });
}
