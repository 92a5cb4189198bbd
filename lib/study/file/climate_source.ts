/** Finds and reads the climate year of a study. @module */
import { dirname, isAbsolute, join } from "node:path";
import { InputError } from "../../basics/mod.ts";
import {
  type ClimateGiven,
  type ClimateYear,
  parseColumns,
  type Place,
  readClimate,
  readNormals,
  yearFromNormals,
} from "../../climate/mod.ts";
import { readTextFile } from "./read_text.ts";
import type { YamlSource } from "./yaml_source.ts";

/** A climate year and all texts it was made from, for the hash. */
export interface LoadedClimate {
  /** the weather */
  readonly year: ClimateYear;
  /** texts it was made from */
  readonly texts: readonly string[];
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
  return { year, texts: columnsText === undefined ? [text] : [text, columnsText] };
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
    path === undefined || isAbsolute(path) ? path : join(folder, path);
  if (override.climate === undefined) {
    for (const key of ["file", "columns", "normals"] as const) {
      await requireNamedFile(local(given[key]), key, source);
    }
  }
  const file = override.climate ?? local(given.file);
  const columns = override.climate === undefined
    ? override.columns ?? local(given.columns)
    : override.columns;
  if (file !== undefined) return await loadClimateFile(file, columns, place);
  if (columns !== undefined) {
    throw new InputError(
      "A columns file needs a climate file: the study's year is made from normals",
      {
        file: columns,
      },
    );
  }
  const normalsFile = local(given.normals)!;
  const text = await readTextFile(normalsFile, "normals file");
  const year = yearFromNormals(readNormals(text, normalsFile), place, given.seed);
  return { year, texts: [text, String(given.seed)] };
}

/** Names the line of the study that names a file which is not there. */
async function requireNamedFile(
  path: string | undefined,
  key: keyof ClimateGiven,
  source: YamlSource,
): Promise<void> {
  if (path === undefined || await Deno.stat(path).then(() => true, () => false)) return;
  throw new InputError(
    `Cannot find the file "${path}" named by "climate.${key}": there is no such file; ` +
      "a path in a study file is seen from the folder of that file",
    source.locate(["climate", key]),
  );
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
