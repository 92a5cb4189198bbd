/** One file of a logger: every row read, or named. @module */
import { InputError } from "../../basics/mod.ts";
import type { ColumnName } from "../../climate/read/columns_file.ts";
import { parseNumber } from "../../climate/read/table.ts";
import { momentReader } from "./clock.ts";
import { type LoggerMap, NO_VALUE } from "./map.ts";
import { GrowingNumbers } from "./numbers.ts";
import { logQuantity } from "./quantities.ts";
import { RowNames } from "./row_names.ts";
import { rowBlocks } from "./rows.ts";

/** A file of a log. */
export interface LogSource {
  /** path or name, for messages and to find its logger */
  readonly file: string;
  /** its text, whole or in pieces of any length that are asked for one after the other */
  readonly text: string | Iterable<string>;
}

/** Cells of one channel, close to each other, that are no value of it. */
export interface OddCells {
  /** place of the sensor in the logger */
  readonly sensor: number;
  /** what they are: text, or numbers that cannot be true */
  readonly kind: "unreadable" | "outOfRange";
  /** first row in the order of the file, from 0 */
  readonly fromRow: number;
  /** last row, from 0 */
  toRow: number;
  /** number of them */
  cells: number;
  /** the first as written */
  readonly text: string;
}

/** Odd cells of one channel with no more good rows than this between them are told together. */
const TOGETHER = 20;

/** Gathers odd cells in runs. */
class OddRuns {
  readonly runs: OddCells[] = [];
  private readonly last = new Map<number, OddCells>();
  add(row: number, sensor: number, kind: OddCells["kind"], text: string): void {
    const run = this.last.get(sensor);
    if (run !== undefined && run.kind === kind && row - run.toRow <= TOGETHER) {
      run.toRow = row;
      run.cells++;
      return;
    }
    const next: OddCells = { sensor, kind, fromRow: row, toRow: row, cells: 1, text };
    this.last.set(sensor, next);
    this.runs.push(next);
  }
}

/** The rows of one file as written. */
export interface LoggerFile {
  /** its name */
  readonly file: string;
  /** s since 1970 of the logger's clock, taken as UTC, by row */
  readonly clock: Float64Array;
  /** true where the file's moments are UTC */
  readonly utc: boolean;
  /** line by row, from 1 */
  readonly lines: Float64Array;
  /** SI values by sensor and row; NaN where there is none */
  readonly values: readonly Float64Array[];
  /** cells that are no value */
  readonly odd: readonly OddCells[];
  /** number of rows that are not read, and the runs of them */
  readonly names: RowNames;
}

/** Rows by which the usual width is told where a file is wider or narrower than its head. */
const FIRST_ROWS = 50;

/**
 * Reads a file.
 *
 * @param source the file
 * @param logger how its logger writes
 * @param progress told the number of rows done after each block
 * @throws {InputError} where it is empty, a column is not there, or no row has a time
 */
export function readLoggerFile(
  source: LogSource,
  logger: LoggerMap,
  progress?: (rows: number) => void,
): LoggerFile {
  const { file } = source;
  const missing = new Set([...NO_VALUE, ...logger.missing]);
  const missingNumbers = new Set(logger.missing.map(Number).filter((one) => !Number.isNaN(one)));
  const names = new RowNames(file);
  const clock = new GrowingNumbers();
  const lines = new GrowingNumbers();
  const series = logger.sensors.map(() => new GrowingNumbers());
  const rules = logger.sensors.map(({ sensor }) => logQuantity(sensor.quantity));
  const odd = new OddRuns();
  let heads: readonly string[] | null = null;
  let layout: Layout | null = null;
  let utcRows = 0;
  for (const block of rowBlocks(source.text, logger.delimiter, file)) {
    block.rows.forEach((cells, index) => {
      const line = block.firstLine + index;
      if (line <= logger.skipLines || isEmpty(cells)) return;
      if (logger.header && heads === null) {
        heads = cells.map((head) => head.trim());
        return;
      }
      layout ??= layOut(logger, heads, block.rows.slice(index), { file, line });
      if (heads !== null && sameHeads(cells, heads)) {
        names.add(line, "heads", () => "The heads stand here again; the row is left out");
        return;
      }
      const width = lastFilled(cells) + 1;
      if (width > layout.most) {
        names.add(
          line,
          "wide",
          () =>
            `Cannot read the row: expected ${layout!.most} cells, found ${width}; remove stray ` +
            "delimiters, or restore the line break",
        );
        return;
      }
      if (cells.length < layout.least) {
        names.add(
          line,
          "narrow",
          () =>
            `Cannot read the row: expected ${layout!.least} cells, found ${cells.length}; the ` +
            "line is cut off; restore it, or delete it",
        );
        return;
      }
      const moment = layout.moment(cells);
      if (typeof moment === "string") {
        names.add(line, "time", () => moment);
        return;
      }
      if (moment.utc) utcRows++;
      const row = clock.length;
      clock.push(moment.seconds);
      lines.push(line);
      for (let s = 0; s < series.length; s++) {
        const text = cells[layout.columns[s]!]!.trim();
        const { scale, shift } = logger.sensors[s]!;
        let value = NaN;
        if (!missing.has(text) && !(missingNumbers.size > 0 && missingNumbers.has(Number(text)))) {
          const number = parseNumber(text, logger.decimalComma);
          value = number * scale + shift;
          if (Number.isNaN(number)) odd.add(row, s, "unreadable", text);
          else if (!(value >= rules[s]!.low && value <= rules[s]!.high)) {
            odd.add(row, s, "outOfRange", text);
            value = NaN;
          }
        }
        series[s]!.push(value);
      }
    });
    progress?.(clock.length + names.count);
  }
  names.beforeReading = names.count;
  if (clock.length === 0) {
    const why = names.runs[0]?.message;
    throw new InputError(
      why === undefined
        ? "Cannot read the log: it has no rows"
        : `Cannot read the log: none of its ${names.count} rows can be read. The first: ${why}`,
      { file },
    );
  }
  if (utcRows > 0 && utcRows < clock.length) {
    throw new InputError(
      `Cannot read the log: ${utcRows} of ${clock.length} rows tell their distance from UTC, the ` +
        "others do not; export all of them in one way",
      { file },
    );
  }
  return {
    file,
    clock: clock.view(),
    utc: utcRows > 0,
    lines: lines.view(),
    values: series.map((one) => one.view()),
    odd: odd.runs,
    names,
  };
}

function isEmpty(cells: readonly string[]): boolean {
  return cells.every((cell) => cell.trim() === "") && cells.length <= 1;
}

function lastFilled(cells: readonly string[]): number {
  let last = cells.length - 1;
  while (last >= 0 && cells[last]!.trim() === "") last--;
  return last;
}

function sameHeads(cells: readonly string[], heads: readonly string[]): boolean {
  return cells[0]?.trim() === heads[0] && cells.length === heads.length &&
    cells.every((cell, i) => cell.trim() === heads[i]);
}

interface Layout {
  /** place of each sensor's column */
  readonly columns: readonly number[];
  readonly moment: ReturnType<typeof momentReader>;
  /** cells that a whole row has at least */
  readonly least: number;
  /** cells that a row has at most */
  readonly most: number;
}

function layOut(
  logger: LoggerMap,
  heads: readonly string[] | null,
  rows: readonly (readonly string[])[],
  place: { readonly file: string; readonly line: number },
): Layout {
  const width = heads?.length ?? usualWidth(rows);
  const where = { file: place.file, line: heads === null ? place.line : logger.skipLines + 1 };
  const find = (name: ColumnName) => {
    const index = typeof name === "number" ? name - 1 : heads?.indexOf(name.trim()) ?? -1;
    if (index >= 0 && index < width) return index;
    throw new InputError(
      typeof name === "number"
        ? `Cannot find column ${name}: the table has ${width} columns; correct the number or the ` +
          "delimiter in the log map"
        : heads === null
        ? `Cannot find column "${name}": the table has no header line; give its number`
        : `Cannot find column "${name}": the headers are ${
          heads.map((head) => `"${head}"`).join(", ")
        }; correct the log map, or its delimiter`,
      where,
    );
  };
  const time = logger.time.length === 0
    ? [{ index: 0, format: "" }]
    : logger.time.map(({ column, format }) => ({ index: find(column), format }));
  const columns = logger.sensors.map(({ column }) => find(column));
  // loggers that leave out empty cells at the end write narrower rows than their head
  const needed = Math.max(...columns, ...time.map(({ index }) => index)) + 1;
  const usual = usualWidth(rows);
  return {
    columns,
    moment: momentReader(time),
    least: usual >= needed ? Math.min(width, usual) : width,
    most: width,
  };
}

function usualWidth(rows: readonly (readonly string[])[]): number {
  const widths = rows.slice(0, FIRST_ROWS).filter((row) => !isEmpty(row)).map((row) => row.length)
    .sort((a, b) => a - b);
  return widths[widths.length >> 1] ?? 0;
}
