/**
 * Small tables of data: CSV text with a header line, each fault told with file and line.
 *
 * @module
 */
import Papa from "papaparse";
import { InputError } from "./errors.ts";

/** One row of a data table, with checked access by column. */
export interface DataRow {
  /** line in the file, from 1 */
  readonly line: number;
  /** Text of a column; the column must exist, the text may be empty. */
  text(column: string): string;
  /** Number of a column. */
  number(column: string): number;
  /** Number of a column, or null where the cell is empty. */
  numberOrNull(column: string): number | null;
}

/**
 * Reads a CSV table with a header line. Lines that start with `#` are remarks.
 *
 * @param content the text
 * @param file name shown in messages
 * @param columns columns that must be there
 * @returns the rows in file order
 * @throws {InputError} where a column is missing, the table is empty or a row is too short
 */
export function readDataTable(
  content: string,
  file: string,
  columns: readonly string[],
): readonly DataRow[] {
  const lines = content.replace(/^\uFEFF/, "").split(/\r\n|\r|\n/)
    .map((text, index) => ({ text, line: index + 1 }))
    .filter(({ text }) => text.trim() !== "" && !text.startsWith("#"));
  const [head, ...body] = lines;
  if (head === undefined) throw new InputError("Cannot read the table: it is empty", { file });
  const names = cells(head.text).map((name) => name.trim());
  for (const column of columns) {
    if (!names.includes(column)) {
      throw new InputError(
        `Cannot find the column "${column}": the columns are ${names.join(", ")}`,
        { file, line: head.line },
      );
    }
  }
  if (body.length === 0) throw new InputError("Cannot read the table: it has no rows", { file });
  return body.map(({ text, line }) => dataRow(cells(text), names, { file, line }));
}

function cells(line: string): string[] {
  return Papa.parse<string[]>(line, { delimiter: "," }).data[0] ?? [];
}

function dataRow(
  values: readonly string[],
  names: readonly string[],
  place: { readonly file: string; readonly line: number },
): DataRow {
  if (values.length !== names.length) {
    throw new InputError(
      `Cannot read the row: it has ${values.length} cells, the header has ${names.length}`,
      place,
    );
  }
  const text = (column: string): string => (values[names.indexOf(column)] ?? "").trim();
  const numberOrNull = (column: string): number | null => {
    const cell = text(column);
    if (cell === "") return null;
    const value = Number(cell);
    if (!Number.isFinite(value)) {
      throw new InputError(`Cannot read "${cell}" as a number`, { ...place, column });
    }
    return value;
  };
  const number = (column: string): number => {
    const value = numberOrNull(column);
    if (value === null) {
      throw new InputError("Cannot leave this cell empty: expected a number", { ...place, column });
    }
    return value;
  };
  return { line: place.line, text, number, numberOrNull };
}

/**
 * Finds an item by its id.
 *
 * @param items the items of one table
 * @param id the id sought
 * @param what name of the thing for the message, such as "tube"
 * @returns the item
 * @throws {InputError} listing the known ids
 */
export function findById<Item extends { readonly id: string }>(
  items: readonly Item[],
  id: string,
  what: string,
): Item {
  const found = items.find((item) => item.id === id);
  if (found === undefined) {
    const known = items.map((item) => item.id).join(", ");
    throw new InputError(`Cannot find the ${what} "${id}": the known ones are ${known}`);
  }
  return found;
}
