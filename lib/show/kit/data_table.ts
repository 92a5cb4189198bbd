/** Tables with SI and US columns, the reader's first, as HTML and as plain text. @module */
import { type DisplayScale, displayUnit, type Kind, showNumber } from "../../units/mod.ts";
import { escapeMarkup } from "./escape.ts";
import { inOneSystem } from "./layout.ts";
import { readersUnits } from "./reader.ts";

/** One cell before it is shown; null is shown as a dash. */
export type Cell = number | string | null;

/** One column of a table. */
export interface Column<Row> {
  /** words at the top, without unit */
  readonly head: string;
  /** what stands in the cell: SI value, or text */
  readonly value: (row: Row, index: number) => Cell;
  /** kind of lib/units/kinds.ts; gives unit, digits and the US column */
  readonly kind?: Kind;
  /** decimals of the SI column where the usual ones do not do */
  readonly digits?: number;
  /** true sets a column of texts to the right, unbroken, like numbers */
  readonly right?: boolean;
  /** false leaves the column of the other system out */
  readonly us?: boolean;
}

/** A table ready to be written. */
export interface DataTable {
  /** column heads, with units */
  readonly heads: readonly string[];
  /** cells as text, row by row */
  readonly rows: readonly (readonly string[])[];
  /** true for columns of numbers, set to the right */
  readonly numeric: readonly boolean[];
}

/** A column with its head and formatter worked out. */
interface ShownColumn<Row> {
  readonly head: string;
  readonly numeric: boolean;
  readonly text: (row: Row, index: number) => string;
}

/** Works out heads and cells; a kind with a US unit becomes two columns. */
export function dataTable<Row>(
  rows: readonly Row[],
  columns: readonly Column<Row>[],
): DataTable {
  const shown = columns.flatMap((column) => showColumn(column));
  return {
    heads: shown.map((column) => column.head),
    rows: rows.map((row, index) => shown.map((column) => column.text(row, index))),
    numeric: shown.map((column) => column.numeric),
  };
}

function showColumn<Row>(column: Column<Row>): ShownColumn<Row>[] {
  const plain = (scale: Omit<DisplayScale, "unit">) => (row: Row, index: number) => {
    const value = column.value(row, index);
    if (value === null) return "–";
    if (typeof value === "string") return value;
    return showNumber(value * scale.factor + scale.offset, scale.digits);
  };
  if (column.kind === undefined) {
    const numeric = column.digits !== undefined || column.right === true;
    const scale = { factor: 1, offset: 0, digits: column.digits ?? 2 };
    return [{ head: column.head, numeric, text: plain(scale) }];
  }
  const { si, us } = displayUnit(column.kind);
  const head = (unit: string) => unit === "–" ? column.head : `${column.head}, ${unit}`;
  const digits = column.digits ?? si.digits;
  const inSi = { head: head(si.unit), numeric: true, text: plain({ ...si, digits }) };
  if (us === null) return [inSi];
  const inUs = { head: head(us.unit), numeric: true, text: plain(us) };
  const both = readersUnits() === "US" ? [inUs, inSi] : [inSi, inUs];
  return column.us === false || inOneSystem() ? both.slice(0, 1) : both;
}

/** The table as HTML. */
export function tableHtml(table: DataTable, caption?: string): string {
  const align = (index: number, text: string) => {
    if (!table.numeric[index]) return text.length > 12 ? "" : ' style="white-space:nowrap"';
    return ` style="text-align:right${text.length > 24 ? "" : ";white-space:nowrap"}"`;
  };
  const head = table.heads.map((text, index) =>
    `<th scope="col"${table.numeric[index] ? ' style="text-align:right"' : ""}>${
      escapeMarkup(text)
    }</th>`
  ).join("");
  const body = table.rows.map((row) =>
    `<tr>${
      row.map((text, index) => `<td${align(index, text)}>${escapeMarkup(text)}</td>`).join("")
    }</tr>`
  ).join("\n");
  const title = caption === undefined ? "" : `<caption>${escapeMarkup(caption)}</caption>`;
  return `<table class="data">${title}<thead><tr>${head}</tr></thead>\n<tbody>${body}</tbody></table>`;
}

/** The table as plain text with columns in line. */
export function tableText(table: DataTable): string {
  const widths = table.heads.map((head, index) =>
    Math.max(head.length, ...table.rows.map((row) => row[index]!.length))
  );
  const line = (cells: readonly string[]) =>
    cells.map((text, index) =>
      table.numeric[index] ? text.padStart(widths[index]!) : text.padEnd(widths[index]!)
    ).join("  ").trimEnd();
  return [line(table.heads), ...table.rows.map(line)].join("\n");
}
