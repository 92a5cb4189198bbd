/** A text table with known columns, read into numbers row by row. @module */
import Papa from "papaparse";
import { InputError, InputErrors, type Notice } from "../../basics/mod.ts";
import type { AcceptedWord } from "./accepted.ts";
import { type ClimateQuantity, QUANTITY_RULES } from "./quantities.ts";
import type { Place } from "../types.ts";

/** Where one quantity stands in the table and how it becomes SI: value · scale + shift. */
export interface ColumnPlan {
  readonly quantity: ClimateQuantity;
  /** index of the column, from 0 */
  readonly index: number;
  /** head of the column, or its number from 1 where there is no head */
  readonly head: string | number;
  /** unit in the file, for messages */
  readonly unit: string;
  /** true where the unit is that of a sum over the row's time, such as Wh/m2 */
  readonly sum?: boolean;
  readonly scale: number;
  readonly shift: number;
}

/** A moment in the file's own clock. */
export interface Stamp {
  /** where the file gives one */
  readonly year?: number;
  /** 1 to 12 */
  readonly month: number;
  readonly day: number;
  /** minutes after 00:00 of that day, 0 to 1440 */
  readonly minutes: number;
}

/** A text table and all that is known about it. */
export interface TableLayout {
  /** "TMY3", "NSRDB", "PVGIS" or "columns" */
  readonly layout: string;
  readonly file: string;
  readonly place: Place;
  readonly rows: readonly (readonly string[])[];
  /** line of the first row in the file, from 1 */
  readonly firstLine: number;
  readonly columns: readonly ColumnPlan[];
  /** stamp of a row; null where rows stand in order from 1 January */
  readonly stamp: ((row: readonly string[], line: number) => Stamp) | null;
  /** where the stamp stands in its hour */
  readonly stampAt: "start" | "middle" | "end";
  /** minutes to add to a stamp to come to local standard time */
  readonly shiftMinutes: number;
  /** true for cells that mean "no value" */
  readonly isMissing: (cell: string) => boolean;
  /** hours after the start of an entry at which its radiation stands; 0.5 for means of the hour */
  readonly radiationMoment: number;
  /** true where 29 February may be left out without asking */
  readonly leaveOutLeapDay: boolean;
  readonly decimalComma: boolean;
  /** weather that cannot be and is meant all the same; none unless given */
  readonly accept?: readonly AcceptedWord[];
  readonly notices: readonly Notice[];
}

/** Values of a table in SI, one a row; NaN where missing. */
export type TableValues = Partial<Record<ClimateQuantity, Float64Array>>;

/** Most faults listed at once. */
const MOST_FAULTS = 20;

/** Gathers faults and throws them together. */
export class FaultList {
  private readonly faults: InputError[] = [];
  /** Notes a fault; throws at once when there are too many. */
  add(message: string, location: { file: string; line?: number; column?: number | string }): void {
    this.faults.push(new InputError(message, location));
    if (this.faults.length >= MOST_FAULTS) this.throwIfAny();
  }
  /** Throws when anything was noted. */
  throwIfAny(): void {
    if (this.faults.length === 1) throw this.faults[0]!;
    if (this.faults.length > 1) throw new InputErrors(this.faults);
  }
}

/**
 * Reads the columns of a table into SI numbers.
 *
 * @param layout the table
 * @returns one series a quantity, NaN for missing cells
 * @throws {InputErrors} naming line and column of cells that are no numbers or cannot be true
 */
export function readValues(layout: TableLayout): TableValues {
  const faults = new FaultList();
  const values: TableValues = {};
  refuseWideRows(layout, faults);
  for (const plan of layout.columns) values[plan.quantity] = readColumn(layout, plan, faults);
  faults.throwIfAny();
  return values;
}

/** A row with more cells than its fellows has a stray delimiter or swallowed the next line. */
function refuseWideRows(layout: TableLayout, faults: FaultList): void {
  const widths = layout.rows.slice(0, 3).map((row) => row.length).sort((a, b) => a - b);
  const width = widths[widths.length >> 1] ?? 0;
  layout.rows.forEach((row, index) => {
    if (row.length <= width || row.slice(width).every((cell) => cell.trim() === "")) return;
    faults.add(
      `Cannot read the line: expected ${width} columns as in the first lines, found ${row.length}; ` +
        "remove stray delimiters, or restore the line break",
      { file: layout.file, line: layout.firstLine + index },
    );
  });
}

function readColumn(layout: TableLayout, plan: ColumnPlan, faults: FaultList): Float64Array {
  const rule = QUANTITY_RULES[plan.quantity];
  const result = new Float64Array(layout.rows.length).fill(NaN);
  const outside: number[] = [];
  for (let row = 0; row < result.length; row++) {
    const text = layout.rows[row]![plan.index]?.trim();
    if (text !== undefined && layout.isMissing(text)) continue;
    const number = parseNumber(text ?? "", layout.decimalComma);
    result[row] = number * plan.scale + plan.shift;
    if (Number.isNaN(number)) faults.add(unreadable(layout, plan, row), locate(layout, plan, row));
    else if (!(result[row]! >= rule.low && result[row]! <= rule.high)) outside.push(row);
  }
  if (looksLikeFahrenheit(plan, outside, result)) return result;
  for (const row of outside) {
    const text = layout.rows[row]![plan.index]!.trim();
    const inSi = plan.scale === 1 && plan.shift === 0
      ? ""
      : ` (${`${Number(result[row]!.toPrecision(4))} ${rule.unit}`.trim()})`;
    faults.add(
      `Cannot use ${rule.words}: expected ${`${rule.low} to ${rule.high} ${rule.unit}`.trim()}, ` +
        `found ${
          `${text} ${plan.unit}`.trim()
        }${inSi}; check the unit, or list the value as missing in a columns file`,
      locate(layout, plan, row),
    );
  }
  return result;
}

function locate(layout: TableLayout, plan: ColumnPlan, row: number) {
  return { file: layout.file, line: layout.firstLine + row, column: plan.head };
}

function unreadable(layout: TableLayout, plan: ColumnPlan, row: number): string {
  const words = QUANTITY_RULES[plan.quantity].words;
  const cells = layout.rows[row]!;
  const text = cells[plan.index]?.trim();
  if (text === undefined) {
    return `Cannot read ${words}: expected column ${
      plan.index + 1
    }, found only ${cells.length} columns in ` +
      "this line; restore the line";
  }
  return `Cannot read ${words}: expected a number in ${
    plan.unit || "0 to 1"
  }, found "${text}"; correct ` +
    "the cell, or list the text under missing in a columns file";
}

/** Hours above the limit from which on a temperature column is not faulty but in another unit. */
const FAHRENHEIT_HOURS = 50;
/** No weather is hotter than this in degF. */
const HOTTEST_FAHRENHEIT = 135;

/** True for temperatures too hot in many hours and all of them possible in degF; told as a notice. */
function looksLikeFahrenheit(
  plan: ColumnPlan,
  outside: readonly number[],
  values: Float64Array,
): boolean {
  return QUANTITY_RULES[plan.quantity].kind === "temperature" &&
    outside.length >= FAHRENHEIT_HOURS &&
    outside.every((row) => values[row]! > 0 && values[row]! <= HOTTEST_FAHRENHEIT);
}

/** A number written with point or comma; NaN for anything else. */
export function parseNumber(text: string, decimalComma: boolean): number {
  const plain = decimalComma ? text.replace(",", ".") : text;
  return /^[+-]?(\d+(\.\d*)?|\.\d+)([eE][+-]?\d+)?$/.test(plain) ? Number(plain) : NaN;
}

/** How the lines of a table are split into cells, and where they stand. */
export interface RowsPlan {
  readonly delimiter: string;
  readonly file: string;
  /** line of the first row in the file, from 1 */
  readonly firstLine: number;
}

/**
 * Splits lines into cells.
 *
 * @throws {InputError} where a quotation mark is left open and swallows the lines that follow
 */
export function parseRows(lines: readonly string[], plan: RowsPlan): string[][] {
  const { delimiter, file, firstLine } = plan;
  const rows = Papa.parse<string[]>(lines.join("\n"), { delimiter, newline: "\n" }).data;
  const open = rows.findIndex((row) => row.some((cell) => cell.includes("\n")));
  if (open !== -1) {
    throw new InputError(
      "Cannot read the line: it has an unclosed quotation mark; remove it",
      { file, line: firstLine + open },
    );
  }
  return rows;
}

/** Splits text into lines whatever ends them; a byte-order mark goes. */
export function splitLines(text: string): string[] {
  return text.replace(/^\uFEFF/, "").replace(/\r\n?/g, "\n").split("\n");
}
