/** Checks a study file against the schema. @module */
import { fileURLToPath } from "node:url";
import { schemaFaults } from "./faults.ts";
import { STUDY_SCHEMA, type StudyGiven } from "./schema.ts";
import { parseYaml, type YamlSource } from "./yaml_source.ts";

/** Path of the demo study. */
export function defaultStudyPath(): string {
  return fileURLToPath(new URL("../../data/studies/demo/harrow-bend.yaml", import.meta.url));
}

/** The checked content of a parsed file; throws every fault at once. */
export function checkSchema(source: YamlSource): StudyGiven {
  const result = STUDY_SCHEMA.safeParse(source.data);
  if (!result.success) throw schemaFaults(result.error, source);
  return result.data;
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
