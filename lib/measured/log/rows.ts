/** A table piece by piece: never more of its text in memory than a block of lines. @module */
import Papa from "papaparse";
import { InputError } from "../../basics/mod.ts";

/** Characters taken from a text at a time. */
export const BLOCK = 1 << 18;
/** A line longer than this is no line of a table. */
const LONGEST_LINE = 1 << 20;

/** Rows that stand next to each other in a file. */
export interface RowBlock {
  /** cells row by row, as written */
  readonly rows: readonly (readonly string[])[];
  /** line of the first row, from 1; every row is one line */
  readonly firstLine: number;
}

/**
 * Splits a text into rows of cells, block by block; a row is a line, whatever its quotation marks.
 *
 * @param text whole, or in pieces of any length, which are asked for one after the other
 * @param delimiter one character between cells
 * @param file name for messages
 * @throws {InputError} for a line of more than a million characters
 */
export function* rowBlocks(
  text: string | Iterable<string>,
  delimiter: string,
  file: string,
): Generator<RowBlock> {
  let rest = "";
  let line = 1;
  for (const piece of pieces(text)) {
    rest += line === 1 && rest === "" ? piece.replace(/^\uFEFF/, "") : piece;
    // a carriage return at the end may have its line feed in the next piece
    const end = lastLineEnd(rest);
    if (end === 0) {
      if (rest.length > LONGEST_LINE) {
        throw new InputError(
          `Cannot read the log: a line of more than ${LONGEST_LINE} characters is no row of a ` +
            "table; export the log as CSV",
          { file, line },
        );
      }
      continue;
    }
    const lines = rest.slice(0, end).split(/\r\n|\r|\n/);
    lines.pop();
    rest = rest.slice(end);
    yield { rows: cells(lines, delimiter), firstLine: line };
    line += lines.length;
  }
  if (rest !== "") yield { rows: cells(rest.split(/\r/), delimiter), firstLine: line };
}

/** Where the last whole line ends. */
function lastLineEnd(text: string): number {
  const feed = text.lastIndexOf("\n") + 1;
  const held = text.endsWith("\r") ? text.length - 1 : text.length;
  return Math.max(feed, text.lastIndexOf("\r", held - 1) + 1);
}

function* pieces(text: string | Iterable<string>): Generator<string> {
  for (const part of typeof text === "string" ? [text] : text) {
    for (let at = 0; at < part.length; at += BLOCK) yield part.slice(at, at + BLOCK);
  }
}

function cells(lines: readonly string[], delimiter: string): string[][] {
  const parse = (text: string) => Papa.parse<string[]>(text, { delimiter, newline: "\n" }).data;
  const rows = parse(lines.join("\n"));
  // an open quotation mark swallowed lines: each by itself
  const whole = rows.length === lines.length ? rows : lines.map((text) => parse(text)[0] ?? [""]);
  // a line of nothing but a quotation mark is not empty
  return whole.map((row, i) =>
    row.length === 1 && row[0] === "" && lines[i]!.trim() !== "" ? [lines[i]!] : row
  );
}
