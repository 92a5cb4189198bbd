/** Tables of any layout, read through a columns file. @module */
import { InputError } from "../../basics/mod.ts";
import type { ColumnName, ColumnsFile } from "./columns_file.ts";
import { planColumn } from "./plan.ts";
import type { ClimateQuantity } from "./quantities.ts";
import { parseRows, splitLines, type TableLayout } from "./table.ts";
import { trimTail } from "./tail.ts";
import { stampReader } from "./time_format.ts";
import { twelveMonths } from "./twelve_months.ts";
import type { Place } from "../types.ts";

export type { ColumnsFile };

/**
 * Lays out a table as its columns file says.
 *
 * @param text the table
 * @param columns the columns file
 * @param options path of the table and place of the study
 * @returns the table
 * @throws {InputError} for columns that are not there and a place nobody gives
 */
export function layoutColumns(
  text: string,
  columns: ColumnsFile,
  options: { readonly file: string; readonly place?: Place | undefined },
): TableLayout {
  const { file } = options;
  const place = columns.place ?? options.place;
  if (place === undefined) {
    throw new InputError(
      "Cannot read the climate: expected a place with latitude, longitude, elevation and timeZone, " +
        "found none; add it to the columns file",
      { file: columns.file },
    );
  }
  const body = trimTail(splitLines(text).slice(columns.skipLines));
  const headLine = columns.skipLines + 1;
  const { delimiter } = columns;
  const table = parseRows(body, { delimiter, file, firstLine: headLine });
  const heads = columns.header ? (table[0] ?? []).map((head) => head.trim()) : null;
  const find = (name: ColumnName) => indexOf(name, heads, table[0] ?? [], { file, line: headLine });
  const missing = new Set(["", ...columns.missing]);
  const missingNumbers = new Set(
    columns.missing.map(Number).filter((value) => !Number.isNaN(value)),
  );
  const allRows = columns.header ? table.slice(1) : table;
  const bodyLine = headLine + (columns.header ? 1 : 0);
  const parts = columns.time.map((part) => ({ index: find(part.column), format: part.format }));
  const { stamp, notices } = stampReader({ parts, rows: allRows, firstLine: bodyLine, columns });
  const { start, end } = stamp === null
    ? { start: 0, end: allRows.length }
    : twelveMonths({ rows: allRows, stamp, columns, file, firstLine: bodyLine });
  return {
    layout: "columns",
    file,
    place,
    rows: allRows.slice(start, end),
    firstLine: bodyLine + start,
    columns: Object.entries(columns.columns).map(([quantity, { column, unit }]) =>
      planColumn(quantity as ClimateQuantity, find(column), unit, column)
    ),
    stamp,
    stampAt: columns.stampAt,
    shiftMinutes: columns.offsetMinutes +
      Math.round((place.timeZone - (columns.stampZone ?? place.timeZone)) * 60),
    isMissing: (cell) => missing.has(cell) || missingNumbers.has(Number(cell)),
    radiationMoment: 0.5,
    leaveOutLeapDay: columns.leaveOutLeapDay,
    decimalComma: columns.decimalComma,
    accept: columns.accept,
    notices,
  };
}

function indexOf(
  name: ColumnName,
  heads: readonly string[] | null,
  firstRow: readonly string[],
  location: { file: string; line: number },
): number {
  if (typeof name === "number") {
    if (name <= firstRow.length) return name - 1;
    throw new InputError(
      `Cannot find column ${name}: the table has ${firstRow.length} columns; correct the number or the delimiter`,
      location,
    );
  }
  const index = heads?.indexOf(name) ?? -1;
  if (index !== -1) return index;
  throw new InputError(
    heads === null
      ? `Cannot find column "${name}": the table has no header line; give its number`
      : `Cannot find column "${name}": the headers are ${
        heads.map((head) => `"${head}"`).join(", ")
      }`,
    location,
  );
}
