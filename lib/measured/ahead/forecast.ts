/** Reads a forecast of hourly weather through the climate reader. @module */
import { HOUR, HOURS_PER_YEAR, InputError, MONTH_FIRST_HOURS } from "../../basics/mod.ts";
import { layoutColumns } from "../../climate/read/columns_table.ts";
import { parseColumns } from "../../climate/mod.ts";
import { parseRows, readValues, splitLines, type Stamp } from "../../climate/read/table.ts";
import { StampFault } from "../../climate/read/stamp.ts";
import type { ColumnsFile, Place } from "../../climate/mod.ts";
import { clearSkyShare, hourlySun } from "../../sun/mod.ts";
import type { WeatherSpan } from "./weather_span.ts";

/** How to read a forecast. */
export interface ForecastOptions {
  /** path of the file, for messages */
  readonly file: string;
  /** place of the study */
  readonly place: Place;
  /** columns file for a table with other heads, as for weather files */
  readonly columns?: ColumnsFile;
}

/** A forecast, with what was worked out to fill it. */
export interface Forecast extends WeatherSpan {
  /** date and time of the first hour as in the file */
  readonly from: string;
  /** what was filled in or derived, a plain sentence each */
  readonly remarks: readonly string[];
}

/** heads of a plain forecast file */
const HEADS = {
  time: "time",
  temperature: "temperature (degC)",
  humidity: "humidity (%)",
  sun: "sun (W/m2)",
  cloud: "cloud (%)",
  wind: "wind (m/s)",
};
/** h that may be missing in a row */
const LONGEST_GAP = 6;
/** m/s taken where a forecast has no wind: as in a climate file without it (common practice, no source) */
const NO_WIND = 3;
const FEWEST = 12;

/** The columns file of a plain forecast. */
function plainColumns(heads: readonly string[], firstTime: string, file: string): ColumnsFile {
  const need = (head: string) => {
    if (!heads.includes(head)) {
      throw new InputError(
        `Cannot read the forecast: expected a column "${head}", found ${
          heads.map((one) => `"${one}"`).join(", ")
        }; rename the column, or give a columns file`,
        { file, line: 1 },
      );
    }
  };
  [HEADS.time, HEADS.temperature, HEADS.humidity].forEach(need);
  if (!heads.includes(HEADS.cloud)) need(HEADS.sun);
  const column = (name: string, head: string, unit: string) =>
    heads.includes(head) ? `  ${name}: {column: "${head}", unit: "${unit}"}\n` : "";
  const format = /T/.test(firstTime) ? "YYYY-MM-DDTHH:mm" : "YYYY-MM-DD HH:mm";
  return parseColumns(
    `time: {stamp: start, read: [{column: ${HEADS.time}, format: "${format}"}]}\ncolumns:\n` +
      column("dryBulb", HEADS.temperature, "degC") +
      column("relativeHumidity", HEADS.humidity, "%") +
      column("globalHorizontal", HEADS.sun, "W/m2") +
      column("windSpeed", HEADS.wind, "m/s"),
    file,
  );
}

/**
 * Reads a forecast: a row an hour (gaps of up to 6 hours are filled straight), the stamp at the start of
 * the hour in local standard time, with the columns `time` (2027-01-14 06:00), `temperature (degC)`,
 * `humidity (%)`, `sun (W/m2)` or `cloud (%)`, and `wind (m/s)`; other heads and units through a columns
 * file, as for weather files.
 *
 * From cloud cover N, 0 to 1, the sun is 1 − 0.75·N^3.4 of that under clear sky (Kasten & Czeplak 1980
 * [kasten-czeplak-1980], from memory), which is FAO-56's [fao56-1998].
 *
 * @param text of the file
 * @param options file, place, columns
 * @throws InputError naming file, line and column of what cannot be used
 */
export function readForecast(text: string, options: ForecastOptions): Forecast {
  const { file, place } = options;
  if (text.trim() === "") throw new InputError("Cannot read the forecast: it is empty", { file });
  const delimiter = options.columns?.delimiter ?? ",";
  const top = (options.columns?.skipLines ?? 0) + 1;
  const table = parseRows(splitLines(text).slice(top - 1), { delimiter, file, firstLine: top });
  const heads = table[0]!.map((head) => head.trim());
  const columns = options.columns ??
    plainColumns(heads, table[1]?.[heads.indexOf(HEADS.time)] ?? "", file);
  const layout = layoutColumns(text, columns, { file, place });
  const values = readValues(layout);
  if (layout.stamp === null) {
    throw new InputError("Cannot read the forecast: it needs the time of each row", { file });
  }
  if (layout.rows.length < 2) {
    throw new InputError(
      `Cannot use the forecast: ${layout.rows.length} rows; expected ${FEWEST} or more`,
      {
        file,
      },
    );
  }
  const hours = hoursOf(layout.rows, layout.stamp, layout.firstLine, {
    file,
    shift: layout.shiftMinutes -
      (layout.stampAt === "end" ? 60 : layout.stampAt === "middle" ? 30 : 0),
  });
  const cloudAt = heads.indexOf(HEADS.cloud);
  const cloud = cloudAt < 0
    ? undefined
    : Float64Array.from(layout.rows, (row, i) => cloudOf(row[cloudAt], file, layout.firstLine + i));
  const count = hours.at.at(-1)! + 1;
  if (count < FEWEST) {
    throw new InputError(`Cannot use the forecast: ${count} hours; expected ${FEWEST} or more`, {
      file,
    });
  }
  const remarks: string[] = [];
  const spread = (column: Float64Array | undefined, words: string) => {
    if (column === undefined || column.every((one) => Number.isNaN(one))) return undefined;
    const filled = fillHours(hours.at, column, count, words, file);
    if (filled.missing > 0) remarks.push(`${filled.missing} hours of ${words} filled in straight.`);
    return filled.values;
  };
  const dryBulb = spread(values.dryBulb, "temperature");
  const humidity = spread(values.relativeHumidity, "humidity");
  if (dryBulb === undefined || humidity === undefined) {
    throw new InputError("Cannot read the forecast: it needs temperature and humidity", { file });
  }
  const clear = clearSun(place, hours.start, count);
  const given = spread(values.globalHorizontal, "sun");
  const covered = given === undefined ? spread(cloud, "cloud") : undefined;
  if (given === undefined && covered === undefined) {
    throw new InputError("Cannot read the forecast: it needs sun or cloud", { file });
  }
  if (covered !== undefined) remarks.push("The sun is worked out from the cloud cover.");
  const wind = spread(values.windSpeed, "wind");
  if (wind === undefined) remarks.push(`No wind in the forecast: ${NO_WIND} m/s taken.`);
  return {
    start: hours.start,
    from: hours.from,
    dryBulb,
    relativeHumidity: humidity.map((one) => Math.min(1, one)),
    globalHorizontal: given ?? covered!.map((one, i) => clear[i]! * (1 - 0.75 * one ** 3.4)),
    windSpeed: wind ?? new Float64Array(count).fill(NO_WIND),
    remarks,
  };
}

function cloudOf(cell: string | undefined, file: string, line: number): number {
  const text = cell?.trim() ?? "";
  if (text === "") return NaN;
  const value = Number(text) / 100;
  if (value >= 0 && value <= 1) return value;
  throw new InputError(`Cannot use the cloud cover: expected 0 to 100 %, found "${text}"`, {
    file,
    line,
    column: HEADS.cloud,
  });
}

/** W/m² under clear sky. */
function clearSun(place: Place, start: number, count: number): Float64Array {
  const sun = hourlySun(place);
  return Float64Array.from({ length: count }, (_, k) => {
    const hour = (start + k) % HOURS_PER_YEAR;
    return clearSkyShare(place.elevation) * sun.extraterrestrialNormal[hour]! *
      Math.max(0, sun.cosZenith[hour]!);
  });
}

interface RowHours {
  /** hour of the year at which the forecast starts */
  readonly start: number;
  readonly from: string;
  /** hours since then, by row */
  readonly at: readonly number[];
}

function hoursOf(
  rows: readonly (readonly string[])[],
  stampOf: (row: readonly string[], line: number) => Stamp,
  firstLine: number,
  given: { readonly file: string; readonly shift: number },
): RowHours {
  const { file } = given;
  const stamps = rows.map((row, i) => {
    try {
      return stampOf(row, firstLine + i);
    } catch (error) {
      if (!(error instanceof StampFault)) throw error;
      throw new InputError(error.message, { file, line: firstLine + i });
    }
  });
  const times = stamps.map((stamp) =>
    Math.floor(
      (Date.UTC(stamp.year ?? 2001, stamp.month - 1, stamp.day) / 6e4 + stamp.minutes +
        given.shift) / 60,
    )
  );
  times.forEach((time, i) => {
    const step = i === 0 ? 1 : time - times[i - 1]!;
    if (step >= 1 && step <= LONGEST_GAP + 1) return;
    throw new InputError(
      step < 1
        ? `Cannot place the row: it is not later than the one before by an hour; expected a row an hour, in order`
        : `Cannot fill the gap: ${
          step - 1
        } hours are missing before this row; at most ${LONGEST_GAP} are ` +
          "filled in",
      { file, line: firstLine + i },
    );
  });
  const first = new Date(times[0]! * HOUR * 1000);
  // 29 February has the sun of 28 February
  const day = first.getUTCMonth() === 1 ? Math.min(28, first.getUTCDate()) : first.getUTCDate();
  return {
    start: MONTH_FIRST_HOURS[first.getUTCMonth()]! + (day - 1) * 24 + first.getUTCHours(),
    from: first.toISOString().slice(0, 16).replace("T", " "),
    at: times.map((time) => time - times[0]!),
  };
}

function fillHours(
  at: readonly number[],
  column: Float64Array,
  count: number,
  words: string,
  file: string,
): { readonly values: Float64Array; readonly missing: number } {
  const values = new Float64Array(count).fill(NaN);
  column.forEach((value, row) => values[at[row]!] = value);
  const missing = values.reduce((sum, one) => sum + (Number.isNaN(one) ? 1 : 0), 0);
  for (let i = 0; i < count; i++) {
    if (!Number.isNaN(values[i]!)) continue;
    let end = i;
    while (end < count && Number.isNaN(values[end]!)) end++;
    if (end - i > LONGEST_GAP) {
      throw new InputError(
        `Cannot fill the gap: ${words} is missing for ${
          end - i
        } hours; at most ${LONGEST_GAP} are filled in`,
        { file },
      );
    }
    const [before, after] = [values[i - 1] ?? values[end]!, values[end] ?? values[i - 1]!];
    for (let k = i; k < end; k++) {
      values[k] = before + (k - i + 1) / (end - i + 1) * (after - before);
    }
  }
  return { values, missing };
}
