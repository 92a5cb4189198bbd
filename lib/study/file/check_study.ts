/** Checks a study file against the schema. @module */
import { fileURLToPath } from "node:url";
import { type InputError, InputErrors } from "../../basics/mod.ts";
import { FANS } from "../../fan/mod.ts";
import { schemaFaults } from "./faults.ts";
import { checkFanId } from "./own_fans.ts";
import { STUDY_SCHEMA, type StudyGiven } from "./schema.ts";
import { parseYaml, type YamlSource } from "./yaml_source.ts";

/** Path of the demo study. */
export function defaultStudyPath(): string {
  return fileURLToPath(new URL("../../../data/studies/demo/harrow-bend.yaml", import.meta.url));
}

/** The checked content of a parsed file; throws every fault at once. */
export function checkSchema(source: YamlSource): StudyGiven {
  const result = STUDY_SCHEMA.safeParse(source.data);
  const fans = libraryFanFaults(source);
  if (!result.success) {
    const faults = [...schemaFaults(result.error, source).faults, ...fans];
    throw new InputErrors(
      faults.sort((one, other) => (one.location?.line ?? 0) - (other.location?.line ?? 0)),
    );
  }
  if (fans.length > 0) throw new InputErrors(fans);
  return result.data;
}

/** A fan that is not in data/fans, where the study names no curves of its own. */
function libraryFanFaults(source: YamlSource): readonly InputError[] {
  const given = (source.data as { fan?: { fan?: unknown; curves?: unknown } } | null)?.fan;
  if (typeof given?.fan !== "string" || given.curves !== undefined) return [];
  return checkFanId(given.fan, FANS, source);
}

/**
 * Checks the text of a study file, without its climate.
 *
 * @param text YAML
 * @param file name for messages
 * @throws {InputErrors} with every fault, each with file, line and column
 */
export function checkStudyText(text: string, file: string): StudyGiven {
  return checkSchema(parseYaml(text, file));
}
