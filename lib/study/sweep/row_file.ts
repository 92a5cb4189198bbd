/**
 * The file that rows are added to as they finish. What a run that was cut off has finished stays; at
 * the end the rows are put in order.
 *
 * @module
 */
import { InputError } from "../../basics/mod.ts";
import { readTextIfThere } from "../file/read_text.ts";
import { headLine, rowNumber, type TableColumn } from "./table.ts";

/** Rows of a file, by number. */
export type KnownRows = ReadonlyMap<number, string>;

/** A file of rows, open for more. */
export interface RowFile {
  /** numbers of the rows that were there */
  readonly done: ReadonlySet<number>;
  /** adds a row; it is on disk when this returns */
  add(line: string): void;
  /** closes the file */
  close(): void;
}

/**
 * Reads the rows of a file; a last line that was cut off is left out.
 *
 * @throws {InputError} where the file is not a table of this sweep
 */
export async function readRows(
  path: string,
  columns: readonly TableColumn[],
): Promise<{ readonly rows: KnownRows; readonly bytes: number }> {
  const text = await readTextIfThere(path, "rows of a sweep", Infinity) ?? "";
  const whole = text.slice(0, text.lastIndexOf("\n") + 1);
  const [head, ...lines] = whole.split("\n").slice(0, -1);
  if (head === undefined) return { rows: new Map(), bytes: 0 };
  if (head !== headLine(columns)) {
    throw new InputError(
      "Cannot go on with this file: its heads are not those of the sweep; move it away, or choose " +
        "another --out",
      { file: path, line: 1 },
    );
  }
  const rows = new Map(lines.map((line, place) => {
    const row = rowNumber(line, columns);
    if (row !== undefined) return [row, line];
    throw new InputError(
      "Cannot go on with this file: the line is not a row of the sweep; mend it from a copy, or " +
        "delete the line, so that its row is computed again",
      { file: path, line: place + 2 },
    );
  }));
  return { rows, bytes: new TextEncoder().encode(whole).length };
}

/** Opens a file of rows, made with its heads where it is not there. */
export async function openRows(path: string, columns: readonly TableColumn[]): Promise<RowFile> {
  const { rows, bytes } = await readRows(path, columns);
  const file = await Deno.open(path, { create: true, write: true });
  await file.truncate(bytes);
  await file.seek(0, Deno.SeekMode.End);
  const write = (text: string) => {
    const encoded = new TextEncoder().encode(text);
    for (let at = 0; at < encoded.length;) at += file.writeSync(encoded.subarray(at));
    file.syncDataSync();
  };
  if (bytes === 0) write(`${headLine(columns)}\n`);
  return {
    done: new Set(rows.keys()),
    add: (line) => write(`${line}\n`),
    close: () => file.close(),
  };
}

/** Text of the whole table, rows in order. */
export function orderedText(rows: KnownRows, columns: readonly TableColumn[]): string {
  const lines = [...rows].sort(([one], [other]) => one - other).map(([, line]) => line);
  return [headLine(columns), ...lines, ""].join("\n");
}
