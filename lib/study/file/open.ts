/** Opens a study: reads, checks once, gives SI values that cannot be changed. @module */
import { createHash } from "node:crypto";
import { basename } from "node:path";
import { InputErrors } from "../../basics/mod.ts";
import { checkSchema } from "./check_study.ts";
import { checkClimateSection, loadClimate } from "./climate_source.ts";
import { defaultsTaken } from "./defaults.ts";
import { deriveDefaults } from "./derive.ts";
import { deepFreeze } from "./freeze.ts";
import { crossFaults, placeNotices, unusualValues } from "./plausibility.ts";
import { checkFanId, loadFans } from "./own_fans.ts";
import { readTextFile } from "./read_text.ts";
import type { StudyGiven } from "./schema.ts";
import type { Study, StudyHeading } from "../types.ts";
import { parseYaml } from "./yaml_source.ts";

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
 * @throws {InputErrors} with every fault found, each with file and line
 */
export async function openStudy(path: string, options: OpenOptions = {}): Promise<Study> {
  const text = await readTextFile(path, "study file");
  const source = parseYaml(text, path);
  const given = checkSchema(source);
  const fans = await loadFans(given.fan, source);
  const unknownFan = given.fan.fan === undefined ? [] : checkFanId(given.fan.fan, fans.all, source);
  const early = [...checkClimateSection(given.climate, source), ...unknownFan];
  if (unknownFan.length > 0) throw new InputErrors(early);
  const { inputs, taken } = deriveDefaults(given, fans);
  const checked = { ...given, ...inputs };
  const faults = [...early, ...crossFaults(checked, source)];
  if (faults.length > 0) throw new InputErrors(faults);
  const { horizon, ...place } = given.place;
  const loaded = await loadClimate(given.climate, place, source, options);
  const year = horizon.length === 0
    ? loaded.year
    : { ...loaded.year, place: { ...loaded.year.place, horizon } };
  return deepFreeze({
    path,
    heading: completeHeading(given.study, path),
    place: year.place,
    climate: year,
    ...inputs,
    defaults: [...defaultsTaken(source.data), ...taken],
    inputHash: hashTexts([text, ...loaded.texts, ...fans.texts]),
    notices: [
      ...placeNotices(place, year.place),
      ...unusualValues(checked),
    ],
  });
}

function completeHeading(given: StudyGiven["study"], path: string): StudyHeading {
  const fileName = basename(path).replace(/\.ya?ml$/i, "");
  const name = given.name ??
    (fileName.replaceAll(/[^A-Za-z0-9._-]+/g, "-").replace(/^[._-]+/, "") || "study");
  return { ...given, name, title: given.title ?? name };
}

function hashTexts(texts: readonly string[]): string {
  const hash = createHash("sha256");
  for (const text of texts) hash.update(text).update("\0");
  return hash.digest("hex");
}
