/** A reader's own weather file, as opening the study with that file reads it. @module */
import { decodeText, InputError } from "../../basics/mod.ts";
import { readNormals } from "../../climate/normals/read_normals.ts";
import { mirroredFault } from "../../climate/read/check_place.ts";
import { parseColumns } from "../../climate/read/columns_file.ts";
import { splitLines } from "../../climate/read/table.ts";
import { readClimate } from "../../climate/read_climate.ts";
import type { ClimateYear } from "../../climate/types.ts";
import { yearFromNormals } from "../../climate/winters/typical_year.ts";
import type { WeatherTerms } from "../types.ts";

/** A file as its reader gives it. */
export interface WeatherFile {
  /** for messages */
  readonly name: string;
  /** each a plain number, 0 to 255 */
  readonly bytes: Uint8Array;
}

const COLUMNS_FILE = /\.ya?ml$/i;

/** The table among the files, and its columns file where there is one. */
function sorted(files: readonly WeatherFile[]): readonly [WeatherFile, WeatherFile | undefined] {
  const [columns, ...moreColumns] = files.filter(({ name }) => COLUMNS_FILE.test(name));
  const [table, ...moreTables] = files.filter(({ name }) => !COLUMNS_FILE.test(name));
  const extra = moreTables[0] ?? moreColumns[0];
  if (extra !== undefined) {
    throw new InputError(
      "Cannot use so many files: expected one weather file, and its columns file (.yaml) where the " +
        `table needs one, found ${files.length}; give one year at a time`,
      { file: extra.name },
    );
  }
  if (table === undefined) {
    throw new InputError(
      "A columns file says how to read a table, which is not there: give both files at once",
      columns === undefined ? undefined : { file: columns.name },
    );
  }
  return [table, columns];
}

/** True where a text is a table of twelve monthly normals. */
function isNormals(text: string): boolean {
  const heads = splitLines(text.slice(0, 2000))[0]!.split(",").map((head) => head.trim());
  return heads.includes("month") && heads.includes("mean_temperature_degC");
}

/**
 * Reads a year of weather: any of the layouts of {@link readClimate}, a table with its columns file, or
 * twelve monthly normals.
 *
 * @param files the table, and its columns file where it needs one
 * @param terms what the study says of its weather
 * @throws {InputError} naming file, line and column of what cannot be used
 */
export function ownClimate(files: readonly WeatherFile[], terms: WeatherTerms): ClimateYear {
  const { place, horizon, mendShift, seed } = terms;
  const [table, columns] = sorted(files);
  const file = table.name;
  const text = decodeText(table.bytes, "climate file", file);
  const year = isNormals(text)
    ? yearFromNormals(readNormals(text, file), place, seed)
    : readClimate(text, {
      file,
      place,
      mendShift,
      ...(columns === undefined ? {} : {
        columns: parseColumns(
          decodeText(columns.bytes, "columns file", columns.name),
          columns.name,
        ),
      }),
    });
  const mirrored = mirroredFault(place.longitude, year.place.longitude);
  if (mirrored !== undefined) throw new InputError(mirrored, { file });
  return horizon.length === 0 ? year : { ...year, place: { ...year.place, horizon } };
}
