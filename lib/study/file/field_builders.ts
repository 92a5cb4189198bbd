/** Builders of the schema of one field: text in, value in SI out. @module */
import { z } from "zod";
import {
  kindOf,
  matchWord,
  parseQuantity,
  QuantityError,
  readsAsTemperature,
  readTimeZone,
} from "../../units/mod.ts";
import { wallTransmittance } from "./catalogues.ts";
import { fieldKind, type FieldRow, fieldRow } from "./fields.ts";

/** Schema of one field whose checked value is T. */
export type Field<T> = z.ZodType<T>;

type Refuse = (message: string) => never;
type Reader<T> = (value: unknown, refuse: Refuse) => T;

class Refused extends Error {}

/** Schema that runs a reader, reports what it refuses, and takes the default of the field table. */
function field<T>(key: string, form: object, read: Reader<T>, derived = false): Field<T> {
  const row = fieldRow(key);
  const meta = {
    ...form,
    description: row.meaning + (derived ? ` (default: ${row.source})` : ""),
  };
  const schema = z.unknown().transform((value, context): T => {
    let message = "";
    try {
      return read(value, (text) => {
        message = text;
        throw new Refused(text);
      });
    } catch (error) {
      if (error instanceof Refused) context.addIssue({ code: "custom", message });
      else if (error instanceof QuantityError) {
        context.addIssue({ code: "custom", message: error.message });
      } else throw error;
      return z.NEVER;
    }
  }).meta(meta);
  if (derived) return schema.optional() as unknown as Field<T>;
  if (row.default === "") return schema as unknown as Field<T>;
  return schema.prefault(row.default).meta({ ...meta, default: row.default }) as unknown as Field<
    T
  >;
}

function missing(key: string, wanted: string): string {
  return `"${key}" is missing: ${fieldRow(key).meaning}; expected ${wanted}`;
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
  if (reason !== undefined) refuse(`"${row.key}" is a difference of temperatures; ${reason}`);
}

/** How a value of the wrong shape is named in a message. */
function describe(value: unknown): string {
  if (value === null) return "nothing";
  if (Array.isArray(value)) return "a list";
  return typeof value === "object" ? "a section" : String(value);
}

const QUANTITY_FORM = { type: ["string", "number"] };

/** A quantity with its unit. */
export function quantity(key: string): Field<number> {
  return field(
    key,
    { ...QUANTITY_FORM, examples: [...kindOf(fieldKind(key)).examples] },
    quantityReader(key),
  );
}

/** A quantity whose default is worked out from other inputs. */
export function derivedQuantity(key: string): Field<number | undefined> {
  const form = { ...QUANTITY_FORM, examples: [...kindOf(fieldKind(key)).examples] };
  return field<number | undefined>(key, form, quantityReader(key), true);
}

/** A quantity, or one of the given words, which stands for `meaning`. */
export function quantityOr<T>(key: string, word: string, meaning: T): Field<number | T> {
  const read = quantityReader(key);
  return field<number | T>(
    key,
    { ...QUANTITY_FORM, examples: [kindOf(fieldKind(key)).examples[0], word] },
    (value, refuse) => matchWord(value, [word]) === word ? meaning : read(value, refuse),
  );
}

/** A heat transmittance, or the id of a wall that has one. */
function wallReader(key: string): Reader<number> {
  const read = quantityReader(key);
  return (value, refuse) => {
    if (typeof value !== "string" || !/^(?!r-?\d|rsi-?\d)[a-z][a-z0-9-]*$/.test(value)) {
      return read(value, refuse);
    }
    try {
      return wallTransmittance(value);
    } catch (error) {
      return refuse(error instanceof Error ? error.message : String(error));
    }
  };
}

/** A heat transmittance or the id of a wall. */
export function wall(key: string): Field<number> {
  return field(
    key,
    { ...QUANTITY_FORM, examples: [...kindOf(fieldKind(key)).examples] },
    wallReader(key),
  );
}

/** A heat transmittance, the id of a wall, or "glazed". */
export function wallOrGlazed(key: string): Field<number | "glazed"> {
  const read = wallReader(key);
  return field<number | "glazed">(
    key,
    { ...QUANTITY_FORM, examples: [kindOf(fieldKind(key)).examples[0], "glazed"] },
    (value, refuse) => matchWord(value, ["glazed"]) ?? read(value, refuse),
  );
}

function wholeReader(key: string): Reader<number> {
  const read = quantityReader(key);
  return (value, refuse) => {
    const number = read(value, refuse);
    if (!Number.isInteger(number)) refuse(`"${key}" must be a whole number; found ${value}`);
    return number;
  };
}

/** A whole number. */
export function whole(key: string): Field<number> {
  return field(key, { type: ["integer", "string"] }, wholeReader(key));
}

/** A whole number whose default is worked out from other inputs. */
export function derivedWhole(key: string): Field<number | undefined> {
  return field<number | undefined>(key, { type: ["integer", "string"] }, wholeReader(key), true);
}

/** One of a few words. */
export function choice<const T extends string>(key: string, words: readonly T[]): Field<T> {
  return field(key, { type: "string", enum: [...words] }, (value, refuse) => {
    if (value === undefined) refuse(missing(key, `one of ${words.join(", ")}`));
    return matchWord(value, words) ??
      refuse(`expected one of ${words.join(", ")}; found ${describe(value)}`);
  });
}

/** Yes or no. */
export function yesNo(key: string): Field<boolean> {
  return field(key, { type: ["boolean", "string"] }, (value, refuse) => {
    const text = String(value).toLowerCase();
    if (text === "true" || text === "yes") return true;
    if (text === "false" || text === "no") return false;
    return refuse(`expected yes or no; found ${describe(value)}`);
  });
}

function textReader(key: string): Reader<string> {
  return (value, refuse) => {
    if (value === undefined) refuse(missing(key, "a text"));
    if (typeof value !== "string" && typeof value !== "number") {
      refuse(`expected a text; found ${describe(value)}`);
    }
    const text = String(value).trim();
    if (text === "") refuse(`"${key}" is empty`);
    return text;
  };
}

/** A text. */
export function text(key: string): Field<string> {
  return field(key, { type: "string" }, textReader(key));
}

/** A text that may be left out. */
export function optionalText(key: string): Field<string | undefined> {
  return field<string | undefined>(key, { type: "string" }, textReader(key), true);
}

/** An id of a data table: `find` throws an error that lists the known ids. */
export function id(key: string, find: (id: string) => unknown): Field<string> {
  return field(key, { type: "string" }, idReader(key, find));
}

/** An id whose default is worked out from other inputs. */
export function derivedId(key: string, find: (id: string) => unknown): Field<string | undefined> {
  return field<string | undefined>(key, { type: "string" }, idReader(key, find), true);
}

function idReader(key: string, find: (id: string) => unknown): Reader<string> {
  const read = textReader(key);
  return (value, refuse) => {
    const name = read(value, refuse);
    try {
      find(name);
    } catch (error) {
      refuse((error as Error).message);
    }
    return name;
  };
}

/** Hours east of UTC: `-6`, `UTC-6`, `UTC+05:30` or `MST`. */
export function timeZone(key: string): Field<number> {
  const read = quantityReader(key);
  return field(
    key,
    QUANTITY_FORM,
    (value, refuse) => read(typeof value === "string" ? readTimeZone(value) : value, refuse),
  );
}

/**
 * A list of entries with the given keys, or "none", which stands for an empty one.
 *
 * @param key of the list
 * @param entry keys of one entry
 */
export function list<T>(key: string, entry: z.ZodRawShape): Field<readonly T[]> {
  const row = fieldRow(key);
  return z.preprocess(
    (value) => value === "none" ? null : value,
    z.array(z.strictObject(entry)).nullable(),
  ).prefault("none").meta({ default: "none", description: row.meaning })
    .transform((entries) => entries ?? []) as unknown as Field<readonly T[]>;
}
