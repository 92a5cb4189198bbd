/** The table of study-file fields: defaults, limits, usual range and where each comes from. @module */
import Papa from "papaparse";
import type { Kind } from "../../units/mod.ts";
import table from "../../../data/studies/fields.csv" with { type: "text" };

/** A row of data/studies/fields.csv; quantities are texts with units, "" where there is none. */
export interface FieldRow {
  /** path in the study file, such as "soil.quartz" */
  readonly key: string;
  /** kind of quantity, or "text" for words and ids */
  readonly kind: Kind | "text";
  /** value taken where the user gives none */
  readonly default: string;
  /** hard limits */
  readonly least: string;
  readonly most: string;
  /** outside this the study carries a notice */
  readonly usualLeast: string;
  readonly usualMost: string;
  /** where the default comes from */
  readonly source: string;
  /** one line for the reader and for editors */
  readonly meaning: string;
}

function readRows(): ReadonlyMap<string, FieldRow> {
  const parsed = Papa.parse<Record<string, string>>(table.trim(), { header: true });
  return new Map(parsed.data.map((row) => [row.key!, {
    key: row.key!,
    kind: row.kind as FieldRow["kind"],
    default: row.default!,
    least: row.least!,
    most: row.most!,
    usualLeast: row["usual least"]!,
    usualMost: row["usual most"]!,
    source: row.source!,
    meaning: row.meaning!,
  }]));
}

/** All rows by key, in the order of the table. */
export const FIELDS: ReadonlyMap<string, FieldRow> = readRows();

/** Row of one key; a key without a row is a fault of this library. */
export function fieldRow(key: string): FieldRow {
  const row = FIELDS.get(key);
  if (row === undefined) throw new Error(`Cannot find "${key}" in data/studies/fields.csv`);
  return row;
}

/** Kind of quantity of a key; a key that holds words is a fault of this library. */
export function fieldKind(key: string): Kind {
  const { kind } = fieldRow(key);
  if (kind === "text") throw new Error(`"${key}" holds no quantity in data/studies/fields.csv`);
  return kind;
}

/**
 * Value at a dotted path such as "tubes.length"; undefined where any part is missing.
 *
 * @param data of any form
 * @param path names, and places in lists, with dots between them
 */
export function valueAt(data: unknown, path: string): unknown {
  return path.split(".").reduce<unknown>(
    (value, part) =>
      typeof value === "object" && value !== null
        ? (value as Record<string, unknown>)[part]
        : undefined,
    data,
  );
}
