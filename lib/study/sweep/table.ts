/** The table of a sweep: heads, and rows as lines of CSV. @module */
import Papa from "papaparse";
import { type Figures, wordsCell } from "../../basics/mod.ts";
import { type Kind, kindOf, parseQuantity } from "../../units/mod.ts";
import type { FigureColumn, RowValues, SweptKey, SweptValue } from "./types.ts";

/** Digits of a figure. */
const DIGITS = 10;

/** A column of the table. */
export interface TableColumn {
  /** with the unit in brackets */
  readonly head: string;
  /** true where its cells are numbers */
  readonly numeric: boolean;
}

/** Figures that a sweep writes: all but those a later chapter would give better founded. */
export function figureColumns(figures: Figures): readonly FigureColumn[] {
  return Object.entries(figures).filter(([, { provisional }]) => provisional !== true).map((
    [key, { unit, label, value }],
  ) => ({ key, unit, label, unchanged: value }));
}

/**
 * All columns: row, keys of the study marked "given", figures, and what is wrong with the row.
 *
 * @param keys what is changed
 * @param figures columns of figures
 */
export function tableColumns(
  keys: readonly SweptKey[],
  figures: readonly FigureColumn[],
): readonly TableColumn[] {
  return [
    { head: "row", numeric: true },
    ...keys.map(({ key, kind }) => ({
      head: kind === null ? `given ${key}` : `given ${key} (${unitOf(kind)})`,
      numeric: kind !== null,
    })),
    ...figures.map(({ key, unit }) => {
      const words = unit === "text" || unit === "date";
      return { head: words ? key : `${key} (${unit})`, numeric: !words };
    }),
    { head: "fault", numeric: false },
  ];
}

function unitOf(kind: Kind): string {
  return kindOf(kind).si.replaceAll("^", "") || "1";
}

function keyCell(value: SweptValue, kind: Kind | null): string {
  if (kind !== null) return numberText(parseQuantity(value as string | number, kind));
  return lineCell(typeof value === "object" ? JSON.stringify(value) : String(value));
}

/** Words on one line: a row is a line of its file. */
function lineCell(words: string): string {
  return wordsCell(words.replaceAll(/\s*[\r\n]+\s*/g, "; "));
}

function numberText(value: number): string {
  return Number.isFinite(value) ? String(Number(value.toPrecision(DIGITS))) : "";
}

function figureCell(value: number | string | null | undefined): string {
  if (value === null || value === undefined) return "";
  return typeof value === "number" ? numberText(value) : lineCell(value);
}

/** A row as a line of CSV; its figures, or why there are none. */
export interface FinishedRow {
  /** number from 1 */
  readonly row: number;
  /** values of the keys */
  readonly values: RowValues;
  /** figures by key; null where the row failed */
  readonly figures: Figures | null;
  /** why it failed, "" where it did not */
  readonly fault: string;
}

/** One line of CSV without its end: numbers in SI, cells that do not apply empty. */
export function rowLine(
  { row, values, figures, fault }: FinishedRow,
  keys: readonly SweptKey[],
  columns: readonly FigureColumn[],
): string {
  return lineOf([
    String(row),
    ...keys.map(({ kind }, place) => keyCell(values[place]!, kind)),
    ...columns.map(({ key }) => figureCell(figures?.[key]?.value)),
    lineCell(fault),
  ]);
}

/** Line of heads without its end. */
export function headLine(columns: readonly TableColumn[]): string {
  return lineOf(columns.map(({ head }) => head));
}

function lineOf(cells: readonly string[]): string {
  return Papa.unparse([[...cells]]);
}

/** Cells of a line. */
export function cellsOf(line: string): readonly string[] {
  return Papa.parse<string[]>(line, { delimiter: "," }).data[0] ?? [];
}

/** Number of the row in a line of the table; undefined where the line is not whole. */
export function rowNumber(line: string, columns: readonly TableColumn[]): number | undefined {
  const cells = cellsOf(line);
  const row = Number(cells[0]);
  return cells.length === columns.length && Number.isInteger(row) && row >= 1 ? row : undefined;
}
