/** Finds and reads the climate year of a study. @module */
import { InputError, InputErrors } from "../../basics/mod.ts";
import {
  type ClimateGiven,
  type ClimateYear,
  clockFault,
  mirroredFault,
  parseColumns,
  type Place,
  readClimate,
  readNormals,
  yearFromNormals,
} from "../../climate/mod.ts";
import { type FileNaming, type GivenFile, readGiven } from "./given_file.ts";
import { collect, requireNamedFiles, resolveBeside } from "./named_files.ts";
import type { StudyGiven } from "./schema.ts";
import { textAt, type YamlSource } from "./yaml_source.ts";

/** A climate year and all texts it was made from, for the hash. */
export interface LoadedClimate {
  /** the weather */
  readonly year: ClimateYear;
  /** measured years for the odds, in their order; none where the study names none */
  readonly measured: readonly ClimateYear[];
  /** texts it was made from */
  readonly texts: readonly string[];
  /** files it was made from */
  readonly files: readonly GivenFile[];
}

/** Reads an hourly file, with a columns file where one is given. */
export async function loadClimateFile(
  file: string,
  columnsFile: string | undefined,
  options: { readonly place?: Place; readonly mendShift?: boolean } = {},
  named: NamedWeather = BY_HAND,
): Promise<LoadedClimate> {
  const { text, file: given } = await readGiven(file, "climate file", "table", named.climate);
  const columns = columnsFile === undefined
    ? undefined
    : await readGiven(columnsFile, "columns file", "settings", named.columns);
  const year = readClimate(text, {
    file,
    ...options,
    ...(columns === undefined ? {} : { columns: parseColumns(columns.text, columnsFile!) }),
  });
  return columns === undefined
    ? { year, measured: [], texts: [text], files: [given] }
    : { year, measured: [], texts: [text, columns.text], files: [given, columns.file] };
}

/** By what the files of the weather were named. */
export interface NamedWeather {
  /** the weather file */
  readonly climate: FileNaming;
  /** its columns file */
  readonly columns: FileNaming;
}

const BY_HAND: NamedWeather = { climate: { by: "--climate" }, columns: { by: "--columns" } };

/** Files given on the command line in place of the study's. */
interface Override {
  readonly climate?: string | undefined;
  readonly columns?: string | undefined;
}

/**
 * Climate of a study: the file named on the command line, else the file or normals of the study.
 *
 * @param sections the sound sections of the study; without a sound climate and place the weather is
 *   not read, but a missing file is still reported
 * @throws {InputErrors} where the section contradicts itself or a file is missing or faulty
 */
export async function loadWeather(
  sections: Partial<Pick<StudyGiven, "climate" | "place">>,
  source: YamlSource,
  override: Override,
): Promise<LoadedClimate | undefined> {
  const { climate, place } = sections;
  const faults = climate === undefined ? [] : [...checkClimateSection(climate, source)];
  await collect(faults, () => requireClimateFiles(source, override));
  if (faults.length > 0) throw new InputErrors(faults);
  if (climate === undefined || place === undefined) return undefined;
  const { horizon: _horizon, ...site } = place;
  const clock = clockFault(site);
  if (clock !== undefined) throw longitudeFault(`Cannot use the place: ${clock}`, source);
  const loaded = await withMeasured(
    await loadClimate(climate, site, source, override),
    { climate, place: site, override },
    source,
  );
  const mirrored = mirroredFault(site.longitude, loaded.year.place.longitude);
  if (mirrored === undefined) return loaded;
  throw longitudeFault(mirrored, source);
}

/** Fewest files of measured years: five winters lie between six. */
const LEAST_YEARS = 6;

/**
 * Adds the measured years of the odds, each read like the study's own file. Weather given on the command
 * line is of another place or time: the study's years then stay out.
 *
 * @throws {InputErrors} with each file that is missing or faulty
 */
async function withMeasured(
  loaded: LoadedClimate,
  { climate, place, override }: {
    readonly climate: ClimateGiven;
    readonly place: Place;
    readonly override: Override;
  },
  source: YamlSource,
): Promise<LoadedClimate> {
  const named = climate.measuredYears;
  if (named.length === 0 || override.climate !== undefined) return loaded;
  if (named.length < LEAST_YEARS) {
    throw new InputError(
      `Cannot count odds from ${named.length} measured years: expected ${LEAST_YEARS} or more that ` +
        "follow one another, the oldest first, as each winter lies between two; leave " +
        '"measuredYears" out to have winters made',
      source.locate(["climate", "measuredYears"]),
    );
  }
  const files = named.map(({ file }, entry) => ({
    key: ["climate", "measuredYears", entry, "file"],
    name: file,
    path: resolveBeside(source, file),
  }));
  await requireNamedFiles(source, files);
  const columns = climate.columns === undefined
    ? undefined
    : resolveBeside(source, climate.columns);
  const faults: InputError[] = [];
  const years = await Promise.all(
    files.map(({ key, name, path }) =>
      collect(
        faults,
        () =>
          loadClimateFile(path, columns, { place, mendShift: climate.mendShift }, {
            climate: { by: key.join("."), name },
            columns: { by: "climate.columns", name: climate.columns },
          }),
      )
    ),
  );
  if (faults.length > 0) throw new InputErrors(faults);
  const read = years.filter((year) => year !== undefined);
  return {
    year: loaded.year,
    measured: read.map(({ year }) => year),
    texts: [...loaded.texts, ...read.map(({ texts }) => texts[0]!)],
    files: [...loaded.files, ...read.map(({ files: [file] }) => file!)],
  };
}

function longitudeFault(message: string, source: YamlSource): InputError {
  return new InputError(message, source.locate(["place", "longitude"]));
}

async function requireClimateFiles(source: YamlSource, override: Override): Promise<void> {
  if (override.climate !== undefined) return;
  const files = ["file", "columns", "normals"].flatMap((name) => {
    const key = ["climate", name];
    const path = textAt(source, key);
    return path === undefined ? [] : [{ key, path: resolveBeside(source, path) }];
  });
  await requireNamedFiles(source, files);
}

async function loadClimate(
  given: ClimateGiven,
  place: Place,
  source: YamlSource,
  override: Override,
): Promise<LoadedClimate> {
  const local = (path: string | undefined) =>
    path === undefined ? undefined : resolveBeside(source, path);
  const file = override.climate ?? local(given.file);
  const columns = override.climate === undefined
    ? override.columns ?? local(given.columns)
    : override.columns;
  if (file !== undefined) {
    return await loadClimateFile(file, columns, { place, mendShift: given.mendShift }, {
      climate: override.climate === undefined
        ? { by: "climate.file", name: given.file }
        : BY_HAND.climate,
      columns: override.columns === undefined
        ? { by: "climate.columns", name: given.columns }
        : BY_HAND.columns,
    });
  }
  if (columns !== undefined) {
    throw new InputError(
      "A columns file needs a climate file, but this study generates its year from normals",
      { file: columns },
    );
  }
  const normalsFile = local(given.normals)!;
  const { text, file: read } = await readGiven(normalsFile, "normals file", "table", {
    by: "climate.normals",
    name: given.normals,
  });
  const year = yearFromNormals(readNormals(text, normalsFile), place, given.seed);
  return { year, measured: [], texts: [text, String(given.seed)], files: [read] };
}

/** Refuses a climate section that names no source or two. */
function checkClimateSection(
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
        'The section "climate" names no weather data: give "file" (hourly) or "normals" (twelve months)',
        source.locateKey([], "climate"),
      ),
    ];
  }
  if (given.columns !== undefined && given.file === undefined) {
    return [fault('"climate.columns" needs "climate.file"', "columns")];
  }
  return [];
}
