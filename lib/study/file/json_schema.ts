/** The study schema for editors. @module */
import { z } from "zod";
import { STUDY_SCHEMA } from "./schema.ts";

/**
 * JSON Schema (draft 2020-12) of the study file, published as `docs/study.schema.json`; a line
 * `# yaml-language-server: $schema=…` at the head of a study makes editors complete its keys.
 */
function studyJsonSchema(): Record<string, unknown> {
  const schema = z.toJSONSchema(STUDY_SCHEMA, {
    io: "input",
    unrepresentable: "any",
    override({ zodSchema, jsonSchema }) {
      const examples = (zodSchema as unknown as z.ZodType).meta()?.examples;
      if (Array.isArray(examples)) jsonSchema.examples = examples;
    },
  });
  return { ...withNone(schema) as Record<string, unknown>, title: "Study file of Winterground" };
}

/** The schema with "none" in place of null: so a study file writes a part that is not there. */
function withNone(part: unknown): unknown {
  if (Array.isArray(part)) return part.map(withNone);
  if (typeof part !== "object" || part === null) return part;
  if ((part as { type?: unknown }).type === "null") return { const: "none" };
  return Object.fromEntries(Object.entries(part).map(([key, value]) => [key, withNone(value)]));
}

/** The text of `docs/study.schema.json`. */
export function studyJsonSchemaText(): string {
  return JSON.stringify(studyJsonSchema(), null, 2) + "\n";
}
