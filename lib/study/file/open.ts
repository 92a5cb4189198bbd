/** Opens a study: reads, checks once, gives SI values that cannot be changed. @module */
import { createHash } from "node:crypto";
import { basename } from "node:path";
import { type InputError, InputErrors } from "../../basics/mod.ts";
import type { ClimateYear } from "../../climate/types.ts";
import type { LogTexts } from "../../measured/types.ts";
import type { PriceList } from "../../worth/mod.ts";
import { applySchema, inFileOrder } from "./check_study.ts";
import { loadWeather } from "./climate_source.ts";
import { defaultsTaken } from "./defaults.ts";
import { deriveDefaults } from "./derive.ts";
import { derivedFaults } from "./derived_limits.ts";
import { fieldFaults } from "./field_faults.ts";
import { deepFreeze } from "./freeze.ts";
import { controlNotices } from "./control_notices.ts";
import { crossFaults, placeNotices, unusualValues } from "./plausibility.ts";
import { measuredNotices } from "./measured_notices.ts";
import { collect } from "./named_files.ts";
import { checkFanId, type LoadedFans, loadFans } from "./own_fans.ts";
import { loadLogs } from "./own_logs.ts";
import { loadPrices } from "./own_prices.ts";
import { type GivenFile, givenFile } from "./given_file.ts";
import { movedFiles } from "./kept_inputs.ts";
import { readTextAndBytes } from "./read_text.ts";
import type { StudyGiven } from "./schema.ts";
import { soilFaults } from "./soil_faults.ts";
import type { Study, StudyHeading } from "../types.ts";
import { parseYaml, type YamlSource } from "./yaml_source.ts";

type Derived = ReturnType<typeof deriveDefaults>;

/** What may be given beside the study file. */
export interface OpenOptions {
  /** climate file that replaces the one of the study */
  readonly climate?: string | undefined;
  /** columns file for it */
  readonly columns?: string | undefined;
}

/**
 * Opens a study file with its climate.
 *
 * @param path study file
 * @param options climate file and columns file that replace those of the study
 * @returns the study, in SI, frozen
 * @throws {InputErrors} with every error found in the study file and the files it names, each with
 *   file and line
 */
export async function openStudy(path: string, options: OpenOptions = {}): Promise<Study> {
  const { text, bytes } = await readTextAndBytes(path, "study file", "settings");
  return await openRead({ text, bytes, path }, options);
}

/**
 * Opens the text of a study file with its climate, as {@link openStudy} does.
 *
 * @param text of the study file
 * @param path where it lies; the files it names are looked for beside it
 * @param options climate file and columns file that replace those of the study
 * @returns the study, in SI, frozen
 * @throws {InputErrors} with every error found, each with file and line
 */
export async function openStudyText(
  text: string,
  path: string,
  options: OpenOptions = {},
): Promise<Study> {
  return await openRead({ text, bytes: new TextEncoder().encode(text), path }, options);
}

/** The study file as it was read. */
interface StudyText {
  readonly text: string;
  readonly bytes: Uint8Array;
  readonly path: string;
}

async function openRead({ text, bytes, path }: StudyText, options: OpenOptions): Promise<Study> {
  const source = { ...parseYaml(text, path), moved: await movedFiles(path) };
  const { given, sections, faults: refused } = applySchema(source);
  const faults = [...refused];
  const fans = await collect(faults, () => loadFans(source));
  const money = await collect(faults, () => loadPrices(source));
  const record = await collect(faults, () => loadLogs(source, sections.measured));
  const loaded = await collect(faults, () => loadWeather(sections, source, options));
  const derived = given === undefined ? undefined : complete(
    given,
    { fans, prices: money?.prices ?? null, logs: record?.logs ?? null },
    source,
    faults,
  );
  if (!given || !fans || !money || !record || !loaded || !derived || faults.length > 0) {
    throw new InputErrors(inFileOrder(faults, source));
  }
  const { horizon, ...place } = given.place;
  const withHorizon = (read: ClimateYear) =>
    horizon.length === 0 ? read : { ...read, place: { ...read.place, horizon } };
  const year = withHorizon(loaded.year);
  const unbuildable = fieldFaults(derived.inputs, year, source);
  if (unbuildable.length > 0) throw new InputErrors(unbuildable);
  return deepFreeze({
    path,
    text,
    heading: completeHeading(given.study, path),
    place: year.place,
    climate: year,
    measuredYears: loaded.measured.map(withHorizon),
    ...derived.inputs,
    defaults: [...defaultsTaken(source.data), ...derived.taken],
    inputHash: hashTexts([text, ...loaded.texts, ...fans.texts, ...money.texts, ...record.texts]),
    studyHash: hashTexts([
      withoutClimate(source),
      ...fans.texts,
      ...money.texts,
      ...record.texts,
    ]),
    files: [
      givenFile({ by: "study" }, path, bytes),
      ...[loaded, fans, money, record].flatMap(({ files }): readonly GivenFile[] => files),
    ],
    notices: [
      ...placeNotices(place, year.place),
      ...measuredNotices(year.place, loaded.measured),
      ...unusualValues({ ...given, ...derived.inputs }),
      ...controlNotices(derived.inputs, source),
    ],
  });
}

/** What was read from the files that the study names. */
interface NamedInputs {
  readonly fans: LoadedFans | undefined;
  readonly prices: PriceList | null;
  readonly logs: LogTexts | null;
}

/** Fills in the defaults and adds what contradicts itself to `faults`. */
function complete(
  given: StudyGiven,
  { fans, prices, logs }: NamedInputs,
  source: YamlSource,
  faults: InputError[],
): Derived {
  const unknownFan = fans === undefined ? [] : checkFanId(source, fans.all);
  // without a usable fan the rest is still checked, with the default fan
  const fit = fans !== undefined && unknownFan.length === 0;
  const derived = deriveDefaults(
    fit ? given : { ...given, fan: { ...given.fan, fan: undefined } },
    fans,
    prices,
    logs,
  );
  faults.push(
    ...unknownFan,
    ...soilFaults(derived.inputs.soil, source),
    ...derivedFaults(derived, source),
    ...crossFaults({ ...given, ...derived.inputs }, source),
  );
  return derived;
}

function completeHeading(given: StudyGiven["study"], path: string): StudyHeading {
  const fileName = basename(path).replace(/\.ya?ml$/i, "");
  const name = given.name ??
    (fileName.replaceAll(/[^A-Za-z0-9._-]+/g, "-").replace(/^[._-]+/, "") || "study");
  return { ...given, name, title: given.title ?? name };
}

/** What the study file says besides its weather; comments, order and line ends do not count. */
function withoutClimate({ data }: YamlSource): string {
  const { climate: _, ...rest } = data as Readonly<Record<string, unknown>>;
  return JSON.stringify(sorted(rest));
}

/** The same data, the keys of each section in the order of the alphabet. */
function sorted(value: unknown): unknown {
  if (typeof value !== "object" || value === null) return value;
  if (Array.isArray(value)) return value.map(sorted);
  return Object.fromEntries(
    Object.entries(value).toSorted(([a], [b]) => a < b ? -1 : 1)
      .map(([key, part]) => [key, sorted(part)]),
  );
}

function hashTexts(texts: readonly string[]): string {
  const hash = createHash("sha256");
  for (const text of texts) hash.update(text).update("\0");
  return hash.digest("hex");
}
