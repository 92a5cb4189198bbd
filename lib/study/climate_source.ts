/** Finds and reads the climate year of a study. @module */
import { dirname, resolve } from "node:path";
import { InputError, type Notice, notice } from "../basics/mod.ts";
import {
  type ClimateYear,
  parseColumns,
  type Place,
  readClimate,
  readNormals,
  yearFromNormals,
} from "../climate/mod.ts";
import { readTextFile } from "./read_text.ts";
import type { ClimateGiven } from "./schema.ts";
import type { YamlSource } from "./yaml_source.ts";

/** A climate year and all texts it was made from, for the hash. */
export interface LoadedClimate {
  readonly year: ClimateYear;
  readonly texts: readonly string[];
  readonly notices: readonly Notice[];
}

/** Reads an hourly file, with a columns file where one is given. */
export async function loadClimateFile(
  file: string,
  columnsFile: string | undefined,
  place?: Place,
): Promise<LoadedClimate> {
  const text = await readTextFile(file, "climate file");
  const columnsText = columnsFile === undefined
    ? undefined
    : await readTextFile(columnsFile, "columns file");
  const year = readClimate(text, {
    file,
    ...(place === undefined ? {} : { place }),
    ...(columnsText === undefined ? {} : { columns: parseColumns(columnsText, columnsFile!) }),
  });
  return { year, texts: columnsText === undefined ? [text] : [text, columnsText], notices: [] };
}

/** Climate of a study: the file named on the command line, else the file or normals of the study. */
export async function loadClimate(
  given: ClimateGiven,
  place: Place,
  source: YamlSource,
  override: { readonly climate?: string | undefined; readonly columns?: string | undefined },
): Promise<LoadedClimate> {
  const folder = dirname(source.file);
  const local = (path: string | undefined) =>
    path === undefined ? undefined : resolve(folder, path);
  const file = override.climate ?? local(given.file);
  const columns = override.climate === undefined
    ? override.columns ?? local(given.columns)
    : override.columns;
  if (file !== undefined) {
    const loaded = await loadClimateFile(file, columns, place);
    return { ...loaded, notices: placeNotices(place, loaded.year.place, file) };
  }
  const normalsFile = local(given.normals)!;
  const text = await readTextFile(normalsFile, "normals file");
  const year = yearFromNormals(readNormals(text, normalsFile), place, given.seed);
  return { year, texts: [text, String(given.seed)], notices: [] };
}

/** Refuses a climate section that names no source or two. */
export function checkClimateSection(
  given: ClimateGiven,
  source: YamlSource,
): readonly InputError[] {
  const fault = (message: string, key: string) =>
    new InputError(message, source.locate(["climate", key]));
  if (given.file !== undefined && given.normals !== undefined) {
    return [fault('Cannot use both "file" and "normals" in "climate": name one', "normals")];
  }
  if (given.file === undefined && given.normals === undefined) {
    return [
      new InputError(
        'The section "climate" names no weather: give "file" (hourly) or "normals" (twelve months)',
        source.locateKey([], "climate"),
      ),
    ];
  }
  if (given.columns !== undefined && given.file === undefined) {
    return [fault('"climate.columns" needs "climate.file"', "columns")];
  }
  return [];
}

/** Says so where the weather file comes from elsewhere than the study's place. */
function placeNotices(study: Place, climate: Place, file: string): readonly Notice[] {
  const apart = Math.max(
    Math.abs(study.latitude - climate.latitude),
    Math.abs(study.longitude - climate.longitude),
  );
  if (apart <= 0.5) return [];
  return [notice(
    "warning",
    "study",
    `The weather file ${file.split(/[\\/]/).pop()} is of ${climate.name} ` +
      `(${climate.latitude} deg, ${climate.longitude} deg), the study names ${study.name} ` +
      `(${study.latitude} deg, ${study.longitude} deg): the place of the weather file is used`,
  )];
}
