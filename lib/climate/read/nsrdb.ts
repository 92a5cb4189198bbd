/** Reader for the public NSRDB hourly layout. @module */
import { InputError } from "../../basics/mod.ts";
import { makeStamp } from "./stamp.ts";
import { planByHeads } from "./plan.ts";
import { parseNumber, parseRows, splitLines, type TableLayout } from "./table.ts";
import { trimTail } from "./tail.ts";
import type { Place } from "../types.ts";

/** True where the text is laid out as NSRDB: names and values of the site, then dated heads. */
export function isNsrdb(lines: readonly string[]): boolean {
  return /^Source,Location ID,/.test(lines[0] ?? "") &&
    /^Year,Month,Day,Hour(,Minute)?,/.test(lines[2] ?? "");
}

/**
 * Lays out an NSRDB file.
 *
 * Local standard time; a row stands for the moment of its minute. At minute 30 it is the middle of
 * its hour and taken as the hour's mean; at another minute the radiation is brought to the mean of
 * the hour.
 *
 * Source: NREL National Solar Radiation Database [nsrdb-web], description of the CSV download (SAM
 * format), as seen in the files.
 *
 * @param text the file
 * @param file its path, for messages
 * @returns the table
 * @throws {InputError} where the head cannot be read
 */
export function layoutNsrdb(text: string, file: string): TableLayout {
  const lines = splitLines(text);
  const names = lines[0]!.split(",");
  const site = lines[1]!.split(",");
  const heads = lines[2]!.split(",").map((head) => head.trim());
  const rows = parseRows(trimTail(lines.slice(3)), { delimiter: ",", file, firstLine: 4 });
  const minute = heads.indexOf("Minute");
  const place = readPlace(names, site, file);
  const columns = planByHeads(heads, [
    ["dryBulb", "Temperature", "degC"],
    ["dewPoint", "Dew Point", "degC"],
    ["relativeHumidity", "Relative Humidity", "%"],
    ["globalHorizontal", "GHI", "W/m2"],
    ["directNormal", "DNI", "W/m2"],
    ["diffuseHorizontal", "DHI", "W/m2"],
    ["windSpeed", "Wind Speed", "m/s"],
    ["pressure", "Pressure", "mbar"],
    ["albedo", "Surface Albedo", ""],
  ]);
  const firstMinute = minute === -1 ? 0 : Number(rows[0]?.[minute] ?? 0);
  return {
    layout: "NSRDB",
    file,
    place,
    rows,
    firstLine: 4,
    columns,
    stamp: (row) => {
      const minutes = Number(row[3]) * 60 + (minute === -1 ? 0 : Number(row[minute]));
      return makeStamp(cell(row, 1), cell(row, 2), minutes, row.slice(0, 5).join(","));
    },
    stampAt: "start",
    shiftMinutes: 0,
    isMissing: (text) => text === "" || Number(text) <= -999,
    radiationMoment: firstMinute / 60,
    leaveOutLeapDay: false,
    decimalComma: false,
    notices: [],
  };
}

function cell(row: readonly string[], index: number): number {
  const text = row[index]?.trim() ?? "";
  return text === "" ? NaN : Number(text);
}

function readPlace(names: readonly string[], site: readonly string[], file: string): Place {
  const number = (name: string) => {
    const value = parseNumber(site[names.indexOf(name)]?.trim() ?? "", false);
    if (!Number.isNaN(value)) return value;
    throw new InputError(
      `Cannot read the site: expected a number for ${name}, found "${
        site[names.indexOf(name)] ?? "nothing"
      }"`,
      { file, line: 2, column: name },
    );
  };
  return {
    name: `NSRDB ${site[1] ?? ""}`.trim(),
    latitude: number("Latitude"),
    longitude: number("Longitude"),
    elevation: number("Elevation"),
    timeZone: number(names.includes("Local Time Zone") ? "Local Time Zone" : "Time Zone"),
  };
}
