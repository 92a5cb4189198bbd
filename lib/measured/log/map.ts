/** Which column of which file holds which sensor, and how each logger writes its time. @module */
import { fileName } from "../../basics/mod.ts";
import type { ColumnName, TimePart } from "../../climate/read/columns_file.ts";
import type { Sensor } from "./types.ts";

/** A sensor with the column it stands in. */
export interface SensorColumn {
  /** the sensor */
  readonly sensor: Sensor;
  /** head of its column, or its number from 1 */
  readonly column: ColumnName;
  /** unit of the column, for messages */
  readonly unit: string;
  /** SI = value · scale + shift: a ratio of units */
  readonly scale: number;
  /** in the SI unit of the quantity */
  readonly shift: number;
}

/** From when on a logger's clock is how far ahead. */
export interface ClockPiece {
  /** s since 1970 of the logger's own clock, taken as if it were UTC */
  readonly from: number;
  /** s that the clock is ahead of the true time of its zone */
  readonly ahead: number;
}

/** How one logger's files are read. */
export interface LoggerMap {
  /** unique in a map */
  readonly name: string;
  /** names of its files, `*` for any letters; empty where every file is meant */
  readonly files: readonly string[];
  /** number of lines before the head, or before the first row */
  readonly skipLines: number;
  /** one character between cells */
  readonly delimiter: string;
  /** true where numbers have a decimal comma */
  readonly decimalComma: boolean;
  /** true where the first line read holds heads */
  readonly header: boolean;
  /** cells that mean "no value", besides empty ones and those of {@link NO_VALUE} */
  readonly missing: readonly string[];
  /** columns of the time; empty for a first column such as 2026-01-31 14:05 */
  readonly time: readonly TimePart[];
  /** h east of UTC of its clock in winter */
  readonly timeZone: number;
  /** name in the IANA time zone database, whose changes its clock follows; null where it names none */
  readonly zoneRules: string | null;
  /** true where its clock changes to summer time and back */
  readonly daylightSaving: boolean;
  /** where the stamp stands in its row of time */
  readonly stampAt: "start" | "middle" | "end";
  /** how far its clock is ahead, piece by piece; null: found against a neighbour */
  readonly clock: readonly ClockPiece[] | null;
  /** its sensors */
  readonly sensors: readonly SensorColumn[];
}

/** How all files of a log are read. */
export interface LogMap {
  /** path of the map, for messages */
  readonly file: string;
  /** logger by logger */
  readonly loggers: readonly LoggerMap[];
}

/** Cells that always mean "no value". */
export const NO_VALUE: readonly string[] = ["", "NaN", "nan", "NA", "N/A", "null", "-", "--"];

/** How a logger is read where nothing is said. */
export const PLAIN_LOGGER: Omit<LoggerMap, "name" | "sensors" | "timeZone"> = {
  zoneRules: null,
  files: [],
  skipLines: 0,
  delimiter: ",",
  decimalComma: false,
  header: true,
  missing: [],
  time: [],
  daylightSaving: false,
  stampAt: "end",
  clock: [],
};

/**
 * The logger that a file belongs to.
 *
 * @param map to look in
 * @param file path or name
 * @returns null where no logger names it, or more than one does
 */
export function loggerOf(map: LogMap, file: string): LoggerMap | null {
  const name = fileName(file);
  const fits = map.loggers.filter(({ files }) =>
    files.length === 0 ? map.loggers.length === 1 : files.some((one) => matches(one, name))
  );
  return fits.length === 1 ? fits[0]! : null;
}

function matches(pattern: string, name: string): boolean {
  const body = fileName(pattern).split("*")
    .map((part) => part.replace(/[.+?^${}()|[\]\\]/g, "\\$&")).join(".*");
  return new RegExp(`^${body}$`).test(name);
}
