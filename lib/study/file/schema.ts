/** Schema of the study file, made from the fields of the chapters. @module */
import { z } from "zod";
import {
  type AnyFields,
  choice,
  type Field,
  type Fields,
  open,
  type Partly,
  text,
} from "../../basics/fields.ts";
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
  units: choice("SI", "US"),
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

/** A key of the study file by its dotted path. */
export interface StudyKey {
  /** how its value is written */
  readonly field: Field<unknown>;
  /** the key without places in lists, under which the table of fields knows it */
  readonly row: string;
  /** where its value stands; places in lists count from 0 */
  readonly path: readonly (string | number)[];
}

/**
 * Finds a key such as `house.curtain.coverage`; entries of a list count from 1, as in messages.
 *
 * @param key dotted path
 * @returns undefined where no section knows the key
 */
export function studyKey(key: string): StudyKey | undefined {
  const [section, ...parts] = key.split(".") as [string, ...string[]];
  const path: (string | number)[] = [section];
  const row = [section];
  let fields = SECTIONS.get(section)?.fields;
  for (let place = 0; place < parts.length; place++) {
    const field = fields?.[parts[place]!];
    if (field === undefined) return undefined;
    path.push(parts[place]!);
    row.push(parts[place]!);
    if (place === parts.length - 1) return { field, row: row.join("."), path };
    const within = nestedFields(field);
    if (within?.form === "list") {
      const entry = parts[++place]!;
      if (!/^[1-9]\d*$/.test(entry) || place === parts.length - 1) return undefined;
      path.push(Number(entry) - 1);
    }
    fields = within?.fields;
  }
  return undefined;
}
