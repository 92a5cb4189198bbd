/**
 * Schema of one key of the study file: text in, value in SI out; long because each form of a key has
 * its own messages.
 *
 * @module
 */
import { inert } from "../../basics/mod.ts";
import { z } from "zod";
import type { AnyFields, Field, FieldForm, Finder, Monthly } from "../../basics/fields.ts";
import {
  kindOf,
  matchWord,
  parseQuantity,
  QuantityError,
  readsAsTemperature,
  readTimeZone,
} from "../../units/mod.ts";
import { fieldKind, type FieldRow, fieldRow } from "./fields.ts";
import { namedMonths } from "./named_months.ts";

type Refuse = (message: string) => never;
type Reader<T> = (value: unknown, refuse: Refuse) => T;

class Refused extends Error {}

/** How a key reads its value, and what an editor is told of it. */
interface Reading {
  readonly read: Reader<unknown>;
  readonly shown: Readonly<Record<string, unknown>>;
}

/** A form that holds keys of its own. */
type NestedForm = "list" | "part";

/** The keys within a list or a part; undefined for plain keys. */
export function nestedFields(
  field: FieldForm,
): { readonly form: NestedForm; readonly fields: AnyFields } | undefined {
  if (field.form === "list") return { form: "list", fields: field.entry };
  return field.form === "part" ? { form: "part", fields: field.fields } : undefined;
}

/** Schemas of the keys of a section. */
export function shapeSchema(section: string, fields: AnyFields): z.ZodRawShape {
  return Object.fromEntries(
    Object.entries(fields).map(([name, field]) => [name, fieldSchema(`${section}.${name}`, field)]),
  );
}

/**
 * Schema of one key. Kind, limits and default come from its row in data/studies/fields.csv.
 *
 * @param key dotted path, such as "soil.quartz"
 * @param field how its value is written
 */
export function fieldSchema(key: string, field: Field<unknown>): z.ZodType {
  if (field.form === "list") return listSchema(key, field.entry);
  if (field.form === "part") return partSchema(key, field.fields, field.none);
  return plainSchema(key, reading(key, field), field.open === true);
}

/** Schema that runs a reader, reports what it refuses, and takes the default of the field table. */
function plainSchema(key: string, { read, shown }: Reading, open: boolean): z.ZodType {
  const row = fieldRow(key);
  const meta = { ...shown, description: row.meaning + (open ? ` (default: ${row.source})` : "") };
  const schema = z.unknown().transform((value, context): unknown => {
    try {
      return read(value, (message) => {
        throw new Refused(message);
      });
    } catch (error) {
      if (!(error instanceof Refused || error instanceof QuantityError)) throw error;
      context.addIssue({ code: "custom", message: error.message });
      return z.NEVER;
    }
  }).meta(meta);
  if (open) return schema.optional();
  if (row.default === "") return schema;
  return schema.prefault(row.default).meta({ ...meta, default: row.default });
}

/** Most entries of a list: a corner of the skyline for each degree. */
export const MOST_ENTRIES = 360;

/** A list of entries, or "none", which stands for an empty one. */
function listSchema(key: string, entry: AnyFields): z.ZodType {
  return z.preprocess(
    (value) => value === "none" ? null : value,
    z.array(z.strictObject(shapeSchema(key, entry))).refine(
      (entries) => entries.length <= MOST_ENTRIES,
      `expected at most ${MOST_ENTRIES} entries; leave out those that change little`,
    ).nullable(),
  ).prefault("none").meta({ default: "none", description: fieldRow(key).meaning })
    .transform((entries) => entries ?? []);
}

/** A section of its own, or "none", which stands for `none`. */
function partSchema(key: string, fields: AnyFields, none: unknown): z.ZodType {
  return z.preprocess(
    (value) => value === "none" ? null : value,
    z.strictObject(shapeSchema(key, fields)).nullable(),
  ).prefault("none").meta({ default: "none" }).transform((value) => value === null ? none : value);
}

function reading(key: string, field: FieldForm): Reading {
  switch (field.form) {
    case "quantity":
      return { read: quantityReader(key), shown: quantityShown(key) };
    case "quantityOr":
      return {
        read: orWord(quantityReader(key), field.word, field.meaning),
        shown: quantityShown(key, field.word),
      };
    case "quantityOrId":
      return {
        read: orId(quantityReader(key), field.find, field.words),
        shown: quantityShown(key, ...field.words),
      };
    case "byMonth":
      return { read: monthlyReader(key), shown: monthlyShown(key) };
    case "whole":
      return { read: wholeReader(key), shown: { type: ["integer", "string"] } };
    case "timeZone":
      return { read: timeZoneReader(key), shown: { type: ["string", "number"] } };
    case "choice":
      return {
        read: choiceReader(key, field.words),
        shown: { type: "string", enum: [...field.words] },
      };
    case "yesNo":
      return { read: yesNoReader, shown: { type: ["boolean", "string"] } };
    case "id":
      return { read: idReader(key, field.find), shown: { type: "string" } };
    case "text":
      return {
        read: key === "study.name" ? folderReader(key) : textReader(key),
        shown: { type: "string" },
      };
    case "written":
      return {
        read: (value) => field.read(value),
        shown: { type: "string", examples: [field.example] },
      };
    case "list":
    case "part":
      throw new Error(`"${key}" is a section with keys of its own`);
  }
}

/** What an editor is told of a quantity; words that may stand in its place are among the examples. */
function quantityShown(key: string, ...words: readonly string[]): Reading["shown"] {
  const [first, second] = kindOf(fieldKind(key)).examples;
  return {
    type: ["string", "number"],
    examples: words.length > 0 ? [first, ...words] : [first, second],
  };
}

function missing(key: string, wanted: string): string {
  return `"${key}" is missing: ${fieldRow(key).meaning}; expected ${wanted}`;
}

/** How a value of the wrong shape is named in a message. */
function describe(value: unknown): string {
  if (value === null) return "nothing";
  if (Array.isArray(value)) return "a list";
  return typeof value === "object" ? "a section" : String(value);
}

function quantityReader(key: string): Reader<number> {
  const row = fieldRow(key);
  const kind = fieldKind(key);
  const { phrase, examples: [first, second] } = kindOf(kind);
  return (value, refuse) => {
    if (value === undefined) {
      refuse(missing(key, `${phrase} such as ${first} or ${second}`));
    }
    if (typeof value !== "string" && typeof value !== "number") {
      refuse(`expected ${phrase} such as ${first}; found ${describe(value)}`);
    }
    const number = parseQuantity(value as string | number, kind);
    if (kind === "temperatureDifference") refuseTemperature(value as string | number, row, refuse);
    const low = row.least === "" ? -Infinity : parseQuantity(row.least, kind);
    const high = row.most === "" ? Infinity : parseQuantity(row.most, kind);
    if (number < low || number > high) {
      refuse(`"${key}" must lie between ${row.least} and ${row.most}; found ${value}`);
    }
    return number;
  };
}

/** A temperature where the field wants a difference. */
function refuseTemperature(value: string | number, row: FieldRow, refuse: Refuse): void {
  const most = row.usualMost === ""
    ? Infinity
    : parseQuantity(row.usualMost, "temperatureDifference");
  const reason = readsAsTemperature(value, most);
  if (reason !== undefined) refuse(`"${row.key}" is a temperature difference; ${reason}`);
}

function orWord(read: Reader<number>, word: string, meaning: unknown): Reader<unknown> {
  return (value, refuse) => matchWord(value, [word]) === word ? meaning : read(value, refuse);
}

function orId(
  read: Reader<number>,
  find: Finder<number>,
  words: readonly string[],
): Reader<unknown> {
  return (value, refuse) => {
    const word = matchWord(value, words);
    if (word !== undefined) return word;
    return typeof value === "string" && /^(?!r-?\d|rsi-?\d)[a-z][a-z0-9-]*$/.test(value)
      ? found(find, value, refuse)
      : read(value, refuse);
  };
}

function found<T>(find: Finder<T>, id: string, refuse: Refuse): T {
  try {
    return find(id);
  } catch (error) {
    return refuse(error instanceof Error ? error.message : String(error));
  }
}

/** What an editor is told of values by month. */
function monthlyShown(key: string): Reading["shown"] {
  const [first, second] = kindOf(fieldKind(key)).examples;
  return {
    type: ["string", "number", "array", "object"],
    examples: [first, { Oct: first, Jan: second }],
  };
}

/** One value, twelve from January, or values by the name of their month. */
function monthlyReader(key: string): Reader<Monthly> {
  const read = quantityReader(key);
  const wanted = `one value, a list of twelve from January, or values by month such as {Oct: 2}`;
  return (value, refuse) => {
    if (typeof value !== "object" || value === null) return read(value, refuse);
    if (!Array.isArray(value)) return namedMonths(key, value, (one) => read(one, refuse), refuse);
    if (value.length !== 12) {
      refuse(`"${key}" is ${wanted}; found a list of ${value.length}`);
    }
    return value.map((one) => read(one, refuse));
  };
}

function wholeReader(key: string): Reader<number> {
  const read = quantityReader(key);
  return (value, refuse) => {
    const number = read(value, refuse);
    if (!Number.isInteger(number)) refuse(`"${key}" must be a whole number; found ${value}`);
    return number;
  };
}

function choiceReader(key: string, words: readonly string[]): Reader<string> {
  return (value, refuse) => {
    if (value === undefined) refuse(missing(key, `one of ${words.join(", ")}`));
    return matchWord(value, words) ??
      refuse(`expected one of ${words.join(", ")}; found ${describe(value)}`);
  };
}

const yesNoReader: Reader<boolean> = (value, refuse) => {
  const text = String(value).toLowerCase();
  if (text === "true" || text === "yes") return true;
  if (text === "false" || text === "no") return false;
  return refuse(`expected yes or no; found ${describe(value)}`);
};

function textReader(key: string): Reader<string> {
  return (value, refuse) => {
    if (value === undefined) refuse(missing(key, "text"));
    if (typeof value !== "string" && typeof value !== "number") {
      refuse(`expected text; found ${describe(value)}`);
    }
    const text = String(value).trim();
    if (text === "") refuse(`"${key}" is empty`);
    if (inert(text) !== text) {
      refuse(`"${key}" has signs that no screen shows: ${describe(text)}; write it again`);
    }
    if (text.length > MOST_SIGNS) {
      refuse(`"${key}" has ${text.length} signs; expected at most ${MOST_SIGNS}`);
    }
    return text;
  };
}

/** A name that a folder may have everywhere, and that stays below the folder it is put in. */
const FOLDER_NAME = /^[\p{L}\p{N}][\p{L}\p{M}\p{N} ._()+-]{0,79}$/u;

function folderReader(key: string): Reader<string> {
  const read = textReader(key);
  return (value, refuse) => {
    const name = read(value, refuse);
    if (FOLDER_NAME.test(name)) return name;
    return refuse(
      `"${key}" names the folder of the results: expected at most 80 letters, digits, spaces and ` +
        `. _ ( ) + -, a letter or digit first; found ${describe(name)}`,
    );
  };
}

/** Signs that a text may have. */
const MOST_SIGNS = 2000;

function idReader(key: string, find: Finder): Reader<string> {
  const read = textReader(key);
  return (value, refuse) => {
    const name = read(value, refuse);
    found(find, name, refuse);
    return name;
  };
}

/** Hours east of UTC: `-6`, `UTC-6`, `UTC+05:30` or `MST`. */
function timeZoneReader(key: string): Reader<number> {
  const read = quantityReader(key);
  return (value, refuse) => read(typeof value === "string" ? readTimeZone(value) : value, refuse);
}
