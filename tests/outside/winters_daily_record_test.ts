// Source: daily record of 89 winters at Clemson, open data (OPEN_DATA/daily)
import { assert, assertAlmostEquals } from "@std/assert";
import { deviation, mean, min, rollup } from "d3-array";
import Papa from "papaparse";
import type { MonthlyNormals } from "../../lib/climate/types.ts";
import { winterClimate } from "../../lib/climate/winters/mod.ts";
import { winterTemperature } from "../../lib/climate/winters/temperature.ts";
import { drawDays } from "../../lib/climate/winters/winter.ts";

const folder = Deno.env.get("OPEN_DATA");
const file = folder === undefined ? undefined : `${folder}/daily/clemson_sc_1930_2020.csv`;
const skip = file === undefined;
const SKIPPED = skip ? " (skipped: OPEN_DATA is not set)" : "";

interface Day {
  readonly year: number;
  readonly month: number;
  readonly low: number;
  readonly high: number;
}

const celsius = (fahrenheit: string) => (Number(fahrenheit) - 32) / 1.8;

/** Days with both readings; a low below -30 degC cannot be at this place and is left out. */
function readRecord(text: string): readonly Day[] {
  return Papa.parse<Record<string, string>>(text.trim(), { header: true }).data.flatMap((row) => {
    const { date, tmin_degF: least, tmax_degF: most } = row;
    if (!date || !least || !most || least === "NA" || most === "NA") return [];
    const [year, month] = date.split("-").map(Number);
    const [low, high] = [celsius(least), celsius(most)];
    return low > -30 && high >= low ? [{ year: year!, month: month!, low, high }] : [];
  });
}

/** Normals as a station would publish them. */
function normalsOf(days: readonly Day[]): MonthlyNormals {
  const months = Array.from(
    { length: 12 },
    (_, month) => days.filter((day) => day.month === month + 1),
  );
  const daily = ({ low, high }: Day) => (low + high) / 2;
  const byYear = months.map((of) =>
    [...rollup(of, (one) => one, ({ year }) => year).values()]
      .filter((one) => one.length > 25)
  );
  return {
    meanTemperature: months.map((of) => mean(of, daily)!),
    meanDailyMaximum: months.map((of) => mean(of, ({ high }) => high)!),
    meanDailyMinimum: months.map((of) => mean(of, ({ low }) => low)!),
    dayToDaySpread: byYear.map((years) =>
      Math.sqrt(mean(years, (of) => deviation(of, daily)! ** 2)!)
    ),
    monthToMonthSpread: byYear.map((years) => deviation(years, (of) => mean(of, daily)!)!),
    relativeHumidity: Array(12).fill(0.7),
    globalRadiation: Array(12).fill(3),
    windSpeed: Array(12).fill(3),
  };
}

/** Lowest reading of each winter, July to June, with nine tenths of its days. */
function recordedLows(days: readonly Day[]): number[] {
  const winters = rollup(days, (of) => of, ({ year, month }) => month > 6 ? year : year - 1);
  return [...winters.values()].filter((of) => of.length > 330).map((of) =>
    min(of, ({ low }) => low)!
  );
}

const PLACE = {
  name: "Clemson",
  latitude: 34.7,
  longitude: -82.8,
  elevation: 220,
  timeZone: -5,
};

Deno.test({
  name:
    `coldest hour of a winter: 89 winters of a daily record at Clemson, and made ones${SKIPPED}`,
  ignore: skip,
  fn: async () => {
    const days = readRecord(await Deno.readTextFile(file!));
    const recorded = recordedLows(days);
    assert(recorded.length >= 85, `${recorded.length} winters`);
    const climate = winterClimate(normalsOf(days), PLACE);
    const made = Array.from(
      { length: 600 },
      (_, winter) =>
        min(
          winterTemperature(climate.temperature, drawDays({ seed: 3, winter }, climate.slowShare)),
        )!,
    );
    const shown = `recorded ${mean(recorded)} ± ${deviation(recorded)}, made ${mean(made)} ± ${
      deviation(made)
    }`;
    assertAlmostEquals(mean(recorded)!, -11.6, 0.3, shown);
    assertAlmostEquals(mean(made)!, mean(recorded)!, 0.5, shown);
    assertAlmostEquals(deviation(made)!, deviation(recorded)!, 0.4, shown);
  },
});
