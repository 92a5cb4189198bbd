/** Checks a study file against the schema. @module */
import { fileURLToPath } from "node:url";
import type { z } from "zod";
import { type InputError, InputErrors } from "../../basics/mod.ts";
import { FANS } from "../../fan/mod.ts";
import { schemaFaults } from "./faults.ts";
import { checkFanId } from "./own_fans.ts";
import { STUDY_SCHEMA, type StudyGiven } from "./schema.ts";
import { parseYaml, textAt, type YamlSource } from "./yaml_source.ts";

/** Path of the demo study. */
export function defaultStudyPath(): string {
  return fileURLToPath(new URL("../../../data/studies/demo/harrow-bend.yaml", import.meta.url));
}

/** What the schema makes of a parsed study file. */
export interface SchemaResult {
  /** the whole content, undefined where any part of it is refused */
  readonly given: StudyGiven | undefined;
  /** the sections that are sound by themselves */
  readonly sections: Partial<StudyGiven>;
  /** what the schema refuses */
  readonly faults: readonly InputError[];
}

/** Applies the schema and collects its errors. */
export function applySchema(source: YamlSource): SchemaResult {
  const result = STUDY_SCHEMA.safeParse(source.data);
  if (result.success) return { given: result.data, sections: result.data, faults: [] };
  const { faults } = schemaFaults(result.error, source);
  return { given: undefined, sections: soundSections(source), faults };
}

/** The checked content of a parsed file; throws all errors together. */
function checkSchema(source: YamlSource): StudyGiven {
  const { given, faults } = applySchema(source);
  const all = [...faults, ...libraryFanFaults(source)];
  if (given === undefined || all.length > 0) throw new InputErrors(inFileOrder(all, source));
  return given;
}

/** The study file's own errors by line, then those of other files as they were found. */
export function inFileOrder(
  faults: readonly InputError[],
  source: YamlSource,
): readonly InputError[] {
  const place = ({ location }: InputError) =>
    location?.file === source.file ? location.line ?? 0 : Infinity;
  return faults.toSorted((one, other) =>
    place(one) < place(other) ? -1 : +(place(one) > place(other))
  );
}

function soundSections(source: YamlSource): Partial<StudyGiven> {
  const { shape } = STUDY_SCHEMA as unknown as z.ZodObject<Record<string, z.ZodType>>;
  const data = source.data as Record<string, unknown> | null;
  if (typeof data !== "object" || data === null) return {};
  return Object.fromEntries(
    Object.entries(shape).flatMap(([name, schema]) => {
      const result = schema.safeParse(data[name]);
      return result.success ? [[name, result.data]] : [];
    }),
  );
}

/** A fan that is not in data/fans, where the study names no curves of its own. */
function libraryFanFaults(source: YamlSource): readonly InputError[] {
  return textAt(source, ["fan", "curves"]) === undefined ? checkFanId(source, FANS) : [];
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
