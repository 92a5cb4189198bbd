/** Schema of the study file, made from the fields of the chapters. @module */
import { z } from "zod";
import { type AnyFields, type Fields, open, type Partly, text } from "../../basics/fields.ts";
import { placeFields, type PlaceGiven } from "../../climate/fields.ts";
import { CHAPTERS, type SectionsGiven } from "../chapters.ts";
import type { StudyHeading } from "../types.ts";
import { nestedFields, shapeSchema } from "./field_schema.ts";

/** Heading as given. */
export type HeadingGiven = Partly<StudyHeading, "name" | "title">;

const headingFields: Fields<HeadingGiven> = {
  name: open(text),
  title: open(text),
  author: text,
  question: text,
};

/** The study file after the schema, before derived defaults and the climate. */
export type StudyGiven = SectionsGiven & {
  readonly study: HeadingGiven;
  readonly place: PlaceGiven;
};

/** A section of the file: its keys, and whether it must be there. */
interface FileSection {
  readonly fields: AnyFields;
  readonly required: boolean;
}

/** Every section of the file, in its order. */
const SECTIONS: ReadonlyMap<string, FileSection> = new Map([
  ["study", { fields: headingFields as AnyFields, required: false }],
  ["place", { fields: placeFields as AnyFields, required: true }],
  ...CHAPTERS.map(({ name, section }): [string, FileSection] => [name, {
    fields: section.fields as AnyFields,
    required: "required" in section && section.required === true,
  }]),
]);

function sectionSchema(name: string, { fields, required }: FileSection): z.ZodType {
  const schema = z.strictObject(shapeSchema(name, fields));
  return required ? schema : schema.prefault({} as never);
}

/** Schema of the whole study file. */
export const STUDY_SCHEMA: z.ZodType<StudyGiven> = z.strictObject(
  Object.fromEntries([...SECTIONS].map(([name, section]) => [name, sectionSchema(name, section)])),
) as unknown as z.ZodType<StudyGiven>;

/** Every key of the study file with its section: `["house", ["length", …]]`; sub-sections dotted. */
export const STUDY_KEYS: ReadonlyMap<string, readonly string[]> = new Map([
  ["", [...SECTIONS.keys()]],
  ...[...SECTIONS].flatMap(([name, { fields }]) => keysOf(name, fields)),
]);

function keysOf(section: string, fields: AnyFields): [string, readonly string[]][] {
  return [
    [section, Object.keys(fields)],
    ...Object.entries(fields).flatMap(([key, field]) => {
      const within = nestedFields(field);
      return within === undefined ? [] : keysOf(`${section}.${key}`, within.fields);
    }),
  ];
}

/** Dotted keys whose value is a list of entries, or a section that may be none. */
export const NESTED_KEYS: ReadonlyMap<string, "list" | "part"> = new Map(
  [...SECTIONS].flatMap(([name, { fields }]) =>
    Object.entries(fields).flatMap(([key, field]): [string, "list" | "part"][] => {
      const within = nestedFields(field);
      return within === undefined ? [] : [[`${name}.${key}`, within.form]];
    })
  ),
);
