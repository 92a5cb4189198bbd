/** Twelve months out of a longer record. @module */
import { InputError } from "../../basics/mod.ts";
import type { ColumnsFile } from "./columns_file.ts";
import type { Stamp } from "./table.ts";
import { readable } from "./time_format.ts";

/** A part of a table's rows. */
export interface RowSlice {
  /** index of the first row taken */
  readonly start: number;
  /** index after the last row taken */
  readonly end: number;
}

interface SliceInputs {
  readonly rows: readonly (readonly string[])[];
  readonly stamp: (row: readonly string[], line: number) => Stamp;
  readonly columns: ColumnsFile;
  readonly file: string;
  readonly firstLine: number;
}

/**
 * The rows of the twelve months from the date the columns file gives.
 *
 * @param inputs table and columns file
 * @returns the slice; all rows where no date is given
 * @throws {InputError} where the record does not reach, has no years or is not in order
 */
export function twelveMonths(inputs: SliceInputs): RowSlice {
  const { rows, columns, file, firstLine } = inputs;
  if (columns.from === undefined) return { start: 0, end: rows.length };
  const from = Date.parse(`${columns.from}T00:00Z`);
  const to = new Date(from).setUTCFullYear(new Date(from).getUTCFullYear() + 1);
  const late = columns.stampAt === "end" ? 1 : 0;
  const inside = rows.map((row, index) => {
    const stamp = readable(row, (cells) => inputs.stamp(cells, firstLine + index));
    if (stamp === null) return null;
    const time = timeOf(stamp, columns.file) + columns.offsetMinutes * 6e4 - late;
    return time >= from && time < to;
  });
  const start = inside.indexOf(true);
  if (start === -1) {
    throw new InputError(
      `Cannot find the twelve months from ${columns.from}: the file has no rows in that period`,
      { file },
    );
  }
  const end = inside.lastIndexOf(true) + 1;
  const stray = inside.findIndex((is, index) => is === false && index > start && index < end);
  if (stray === -1) return { start, end };
  throw new InputError(
    `Cannot take twelve months from ${columns.from}: rows are not in time order; this one lies ` +
      "outside and has rows of those months before and after it; sort the file by time",
    { file, line: firstLine + stray },
  );
}

function timeOf(stamp: Stamp, columnsFile: string): number {
  if (stamp.year === undefined) {
    throw new InputError(
      "Cannot take twelve months: the key from needs a format with YYYY or YY under read",
      { file: columnsFile },
    );
  }
  return Date.UTC(stamp.year, stamp.month - 1, stamp.day) + stamp.minutes * 6e4;
}
