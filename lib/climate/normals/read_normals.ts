/** Twelve monthly normals read from a table. @module */
import Papa from "papaparse";
import { InputError } from "../../basics/mod.ts";
import { FaultList, parseNumber, splitLines } from "../read/table.ts";
import { trimTail } from "../read/tail.ts";
import type { MonthlyNormals } from "../types.ts";

type Series = keyof MonthlyNormals;

interface Head {
  readonly series: Series;
  readonly head: string;
  readonly scale: number;
  readonly low: number;
  readonly high: number;
}

const HEADS: readonly Head[] = [
  { series: "meanTemperature", head: "mean_temperature_degC", scale: 1, low: -60, high: 45 },
  { series: "meanDailyMaximum", head: "mean_daily_maximum_degC", scale: 1, low: -60, high: 55 },
  { series: "meanDailyMinimum", head: "mean_daily_minimum_degC", scale: 1, low: -65, high: 45 },
  { series: "relativeHumidity", head: "relative_humidity_percent", scale: 0.01, low: 5, high: 100 },
  {
    series: "globalRadiation",
    head: "global_radiation_kWh_per_m2_day",
    scale: 1,
    low: 0,
    high: 12,
  },
  { series: "windSpeed", head: "wind_speed_m_per_s", scale: 1, low: 0, high: 30 },
];
const SPREAD_HEAD = "day_to_day_spread_K";
const YEARS_HEAD = "month_to_month_spread_K";

/**
 * Reads twelve monthly normals.
 *
 * A CSV table with a head line and one row a month: `month`, `mean_temperature_degC`,
 * `mean_daily_maximum_degC`, `mean_daily_minimum_degC`, `relative_humidity_percent`,
 * `global_radiation_kWh_per_m2_day`, `wind_speed_m_per_s`, and, where known, `day_to_day_spread_K`
 * (standard deviation of daily means within the month) and `month_to_month_spread_K` (standard
 * deviation of the month's mean over the years). Other columns are left alone.
 *
 * @param csvText the table
 * @param file its path, for messages
 * @returns the normals
 * @throws {InputErrors} naming line and column
 */
export function readNormals(csvText: string, file: string): MonthlyNormals {
  const table = Papa.parse<string[]>(trimTail(splitLines(csvText)).join("\n"), {
    delimiter: ",",
    newline: "\n",
  }).data;
  const heads = (table[0] ?? []).map((head) => head.trim());
  const absent = ["month", ...HEADS.map(({ head }) => head)].filter((head) =>
    !heads.includes(head)
  );
  if (absent.length > 0) {
    throw new InputError(`Cannot read the normals: missing columns ${absent.join(", ")}`, {
      file,
      line: 1,
    });
  }
  if (table.length !== 13) {
    throw new InputError(
      `Cannot read the normals: expected a header line and 12 months, found ${table.length} lines`,
      { file, line: Math.min(table.length, 13) },
    );
  }
  const faults = new FaultList();
  const column = (head: Head) => readColumn({ table, heads, head, file, faults });
  readColumn({
    table,
    heads,
    head: { series: "meanTemperature", head: "month", scale: 1, low: 1, high: 12 },
    file,
    faults,
  }).forEach((month, index) => {
    if (!Number.isNaN(month) && month !== index + 1) {
      faults.add(`Cannot read the normals: expected month ${index + 1}, found ${month}`, {
        file,
        line: index + 2,
        column: "month",
      });
    }
  });
  const series = Object.fromEntries(HEADS.map((head) => [head.series, column(head)]));
  const spread = heads.includes(SPREAD_HEAD)
    ? column({ series: "dayToDaySpread", head: SPREAD_HEAD, scale: 1, low: 0, high: 20 })
    : series.meanTemperature!.map(usualSpread);
  const years = heads.includes(YEARS_HEAD)
    ? {
      monthToMonthSpread: column({
        series: "monthToMonthSpread",
        head: YEARS_HEAD,
        scale: 1,
        low: 0,
        high: 15,
      }),
    }
    : {};
  faults.throwIfAny();
  const normals = { ...series, dayToDaySpread: spread, ...years } as unknown as MonthlyNormals;
  refuseWrongOrder(normals, file);
  return normals;
}

/** Spread taken where none is given, K. Common practice, no source. */
function usualSpread(meanTemperature: number): number {
  return Math.min(6, Math.max(3, 4.5 - meanTemperature / 10));
}

interface ColumnInputs {
  readonly table: readonly (readonly string[])[];
  readonly heads: readonly string[];
  readonly head: Head;
  readonly file: string;
  readonly faults: FaultList;
}

function readColumn({ table, heads, head, file, faults }: ColumnInputs): number[] {
  const index = heads.indexOf(head.head);
  return table.slice(1).map((row, month) => {
    const text = row[index]?.trim() ?? "";
    const value = parseNumber(text, false);
    if (!(value >= head.low && value <= head.high)) {
      faults.add(
        `Cannot read the normals: expected a number from ${head.low} to ${head.high}, found "${text}"`,
        { file, line: month + 2, column: head.head },
      );
    }
    return value * head.scale;
  });
}

function refuseWrongOrder(normals: MonthlyNormals, file: string): void {
  for (let month = 0; month < 12; month++) {
    const [low, middle, high] = [
      normals.meanDailyMinimum[month]!,
      normals.meanTemperature[month]!,
      normals.meanDailyMaximum[month]!,
    ];
    if (low < middle && middle < high) continue;
    throw new InputError(
      `Cannot use the normals: expected lowest < mean < highest temperature, found ${low}, ${middle}, ${high}`,
      { file, line: month + 2 },
    );
  }
}
