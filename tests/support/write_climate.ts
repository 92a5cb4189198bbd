/** A climate year written as a table anybody can read. @module */
import Papa from "papaparse";
import { stringify } from "yaml";
import { HOURS_PER_YEAR, MONTH_FIRST_HOURS, monthOfHour } from "../../lib/basics/mod.ts";
import type { ClimateYear } from "../../lib/climate/types.ts";

/** A year as text: the table, and the columns file that reads it back. */
export interface WrittenClimate {
  /** CSV, one row an hour, units in the heads */
  readonly table: string;
  /** YAML */
  readonly columns: string;
}

/**
 * Writes a climate year as a CSV table and the columns file that reads it back without loss.
 *
 * @param year the year
 * @returns both texts
 */
export function writeClimate(year: ClimateYear): WrittenClimate {
  const written = seriesOf(year);
  const heads = ["month", "day", "hour", ...written.map((series) => series.head)];
  const rows = Array.from({ length: HOURS_PER_YEAR }, (_, hour) => {
    const month = monthOfHour(hour);
    const within = hour - MONTH_FIRST_HOURS[month]!;
    const stamp = [month + 1, Math.floor(within / 24) + 1, within % 24];
    return [...stamp, ...written.map(({ values }) => values[hour]!)];
  });
  return {
    table: Papa.unparse({ fields: heads, data: rows }, { newline: "\n" }) + "\n",
    columns: stringify({
      place: { ...year.place },
      header: true,
      time: {
        stamp: "start",
        read: [
          { column: "month", format: "MM" },
          { column: "day", format: "DD" },
          { column: "hour", format: "HH" },
        ],
      },
      columns: Object.fromEntries(
        written.map(({ name, head, unit }) => [name, { column: head, unit }]),
      ),
    }),
  };
}

interface WrittenSeries {
  readonly name: string;
  readonly head: string;
  readonly unit: string;
  readonly values: Float64Array;
}

function seriesOf(year: ClimateYear): WrittenSeries[] {
  const all: [name: keyof ClimateYear, head: string, unit: string][] = [
    ["dryBulb", "dry_bulb_degC", "degC"],
    ["relativeHumidity", "relative_humidity_share", ""],
    ["globalHorizontal", "global_radiation_W_per_m2", "W/m2"],
    ["directNormal", "direct_normal_radiation_W_per_m2", "W/m2"],
    ["diffuseHorizontal", "diffuse_radiation_W_per_m2", "W/m2"],
    ["windSpeed", "wind_speed_m_per_s", "m/s"],
    ["pressure", "pressure_Pa", "Pa"],
    ["skyLongwave", "sky_longwave_W_per_m2", "W/m2"],
    ["albedo", "albedo_share", ""],
  ];
  return all.flatMap(([name, head, unit]) => {
    const values = year[name];
    return values instanceof Float64Array ? [{ name, head, unit, values }] : [];
  });
}
