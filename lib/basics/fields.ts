/**
 * Keys of the study file as plain data: how a value is written. Kind, default, limits, usual range,
 * source and meaning of each key stand in data/studies/fields.csv; both together make the schema.
 *
 * @module
 */

/** Looks up an id; throws an error that lists the known ones. */
export type Finder<T = unknown> = (id: string) => T;

/** How a value is written, without its type. */
export type FieldForm =
  | { readonly form: "quantity" | "whole" | "yesNo" | "text" | "timeZone" }
  | { readonly form: "quantityOr"; readonly word: string; readonly meaning: unknown }
  | {
    readonly form: "quantityOrId";
    readonly find: Finder<number>;
    readonly words: readonly string[];
  }
  | { readonly form: "byMonth" }
  | { readonly form: "choice"; readonly words: readonly string[] }
  | { readonly form: "id"; readonly find: Finder }
  | {
    readonly form: "written";
    readonly read: (value: unknown) => string;
    readonly example: string;
  }
  | { readonly form: "list"; readonly entry: AnyFields }
  | { readonly form: "part"; readonly fields: AnyFields; readonly none: unknown };

/** A key whose checked value, in SI, is T. */
export type Field<T> = FieldForm & {
  /** true where the default follows from other inputs */
  readonly open?: boolean;
  /** type of the checked value; never there at run time */
  readonly value?: T;
};

/** All keys of a section. */
export type Fields<T> = { readonly [K in keyof T]-?: Field<T[K]> };

/** Keys of any section. */
export type AnyFields = Readonly<Record<string, Field<unknown>>>;

/** Inputs of a section in which the keys `Open` may still wait for their default. */
export type Partly<T, Open extends keyof T> =
  & Omit<T, Open>
  & { readonly [K in Open]: T[K] | undefined };

/** A quantity with its unit. */
export const quantity: Field<number> = { form: "quantity" };
/** A whole number. */
export const whole: Field<number> = { form: "whole" };
/** Yes or no. */
export const yesNo: Field<boolean> = { form: "yesNo" };
/** A text. */
export const text: Field<string> = { form: "text" };
/** Hours east of UTC. */
export const timeZone: Field<number> = { form: "timeZone" };

/** A key that may be left out: its default, if any, is worked out from other inputs. */
export function open<T>(field: Field<T>): Field<T | undefined> {
  return { ...field, open: true } as Field<T | undefined>;
}

/** A quantity, or a word that stands for `meaning`. */
export function quantityOr<T>(word: string, meaning: T): Field<number | T> {
  return { form: "quantityOr", word, meaning };
}

/** A quantity, or an id that has one. */
export function quantityOrId(find: Finder<number>): Field<number> {
  return { form: "quantityOrId", find, words: [] };
}

/** A quantity, an id that has one, or a word that is kept. */
export function quantityIdOrWord<const W extends string>(
  find: Finder<number>,
  word: W,
): Field<number | W> {
  return { form: "quantityOrId", find, words: [word] };
}

/** One value for the whole year, or twelve, January first. */
export type Monthly = number | readonly number[];

/**
 * A quantity, twelve of them, or values by the name of their month; a month that is not named keeps
 * the value of the one before it.
 */
export const byMonth: Field<Monthly> = { form: "byMonth" };

/** One of a few words. */
export function choice<const T extends string>(...words: readonly T[]): Field<T> {
  return { form: "choice", words };
}

/** An id of a data table. */
export function id(find: Finder): Field<string> {
  return { form: "id", find };
}

/** A text that `read` checks and writes in one way; it throws where the text is not what it wants. */
export function written(read: (value: unknown) => string, example: string): Field<string> {
  return { form: "written", read, example };
}

/** A list of entries with the given keys, or the word none. */
export function list<T>(entry: Fields<T>): Field<readonly T[]> {
  return { form: "list", entry: entry as AnyFields };
}

/** A section within the section, or the word none, which stands for `none`. */
export function part<T, N>(fields: Fields<T>, none: N): Field<T | N> {
  return { form: "part", fields: fields as AnyFields, none };
}
