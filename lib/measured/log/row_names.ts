/** Rows and cells that were not read, told in runs. @module */
import { describeLocation, type FileLocation } from "../../basics/mod.ts";
import type { NamedRows } from "./types.ts";

/** Gathers the rows of one file that are not read. */
export class RowNames {
  /** runs so far */
  readonly runs: NamedRows[] = [];
  /** number of rows named */
  count = 0;
  /** number of them named while the file was read: the others were read first */
  beforeReading = 0;
  private reason = "";
  private readonly file: string;
  /** For the rows of one file. */
  constructor(file: string) {
    this.file = file;
  }
  /**
   * Names a row.
   *
   * @param line of the row, from 1
   * @param reason short word by which runs are told apart
   * @param message of the first row of a run
   * @param column where the fault is in one
   */
  add(line: number, reason: string, message: () => string, column?: number | string): void {
    this.count++;
    const last = this.runs.at(-1);
    if (last !== undefined && reason === this.reason && last.toLine <= line) {
      this.runs[this.runs.length - 1] = { ...last, toLine: line, rows: last.rows + 1 };
      return;
    }
    this.reason = reason;
    const place: FileLocation = { file: this.file, line, column };
    this.runs.push({
      file: this.file,
      fromLine: line,
      toLine: line,
      rows: 1,
      message: `${describeLocation(place)}: ${message()}`,
    });
  }
}
