/** Reader for the public TMY3 hourly layout. @module */
import Papa from "papaparse";
import { InputError } from "../../basics/mod.ts";
import { makeStamp, StampFault } from "./stamp.ts";
import { planByHeads } from "./plan.ts";
import { parseNumber, parseRows, splitLines, type TableLayout } from "./table.ts";
import { trimTail } from "./tail.ts";
import type { Place } from "../types.ts";

const HEAD_LINE = /^"?Date \(MM\/DD\/YYYY\)"?,"?Time \(HH:MM\)"?,/;

/** True where the text is laid out as TMY3: station on line 1, date and time heads on line 2. */
export function isTmy3(lines: readonly string[]): boolean {
  return HEAD_LINE.test(lines[1] ?? "");
}

/**
 * Lays out a TMY3 file.
 *
 * Source: Wilcox & Marion 2008 [wilcox-marion-2008], table 1-1: local standard time, the stamp
 * 01:00 to 24:00 ends its hour, radiation is the sum of that hour, missing values are -9900.
 *
 * @param text the file
 * @param file its path, for messages
 * @returns the table
 * @throws {InputError} where the head cannot be read
 */
export function layoutTmy3(text: string, file: string): TableLayout {
  const lines = splitLines(text);
  const place = readPlace(lines[0] ?? "", file);
  const heads = Papa.parse<string[]>(lines[1] ?? "").data[0] ?? [];
  const body = trimTail(lines.slice(2));
  return {
    layout: "TMY3",
    file,
    place,
    rows: parseRows(body, { delimiter: ",", file, firstLine: 3 }),
    firstLine: 3,
    columns: planByHeads(heads, [
      ["dryBulb", "Dry-bulb (C)", "degC"],
      ["dewPoint", "Dew-point (C)", "degC"],
      ["relativeHumidity", "RHum (%)", "%"],
      ["globalHorizontal", "GHI (W/m^2)", "W/m2"],
      ["directNormal", "DNI (W/m^2)", "W/m2"],
      ["diffuseHorizontal", "DHI (W/m^2)", "W/m2"],
      ["windSpeed", "Wspd (m/s)", "m/s"],
      ["pressure", "Pressure (mbar)", "mbar"],
      ["albedo", "Alb (unitless)", ""],
    ]),
    stamp: readStamp,
    stampAt: "end",
    shiftMinutes: 0,
    isMissing: (cell) => cell === "" || Number(cell) <= -9900,
    radiationMoment: 0.5,
    leaveOutLeapDay: false,
    decimalComma: false,
    notices: [],
  };
}

function readStamp(row: readonly string[]) {
  const date = /^(\d{1,2})\/(\d{1,2})\/(\d{4})$/.exec(row[0] ?? "");
  const time = /^(\d{1,2}):(\d{2})$/.exec(row[1] ?? "");
  if (date === null || time === null) {
    throw new StampFault(
      `Cannot read the time: expected MM/DD/YYYY and HH:MM, found "${row[0] ?? ""}" and "${
        row[1] ?? ""
      }"; correct the line`,
    );
  }
  const minutes = Number(time[1]) * 60 + Number(time[2]);
  return makeStamp(Number(date[1]), Number(date[2]), minutes, `${row[0]} ${row[1]}`);
}

function readPlace(line: string, file: string): Place {
  const cells = Papa.parse<string[]>(line).data[0] ?? [];
  const [timeZone, latitude, longitude, elevation] = cells.slice(3, 7).map((cell) =>
    parseNumber(cell.trim(), false)
  );
  const numbers = [timeZone, latitude, longitude, elevation];
  if (numbers.some((value) => value === undefined || Number.isNaN(value))) {
    throw new InputError(
      "Cannot read the station: expected number, name, state, time zone, latitude, longitude and " +
        `elevation, found "${line.slice(0, 80)}"`,
      { file, line: 1 },
    );
  }
  return {
    name: [cells[1], cells[2]].filter((part) => part).join(", "),
    latitude: latitude!,
    longitude: longitude!,
    elevation: elevation!,
    timeZone: timeZone!,
  };
}
