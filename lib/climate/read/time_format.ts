/** Dates and times as tables write them. @module */
import { MONTH_NAMES, type Notice, notice } from "../../basics/mod.ts";
import { makeStamp, StampFault } from "./stamp.ts";
import type { ColumnsFile } from "./columns_file.ts";
import type { Stamp, TableLayout } from "./table.ts";

const TOKENS: Readonly<Record<string, string>> = {
  YYYY: "(?<year>\\d{4})",
  YY: "(?<year>\\d{2})",
  MMM: "(?<name>[A-Za-z]{3,9})\\.?",
  MM: "(?<month>\\d{1,2})",
  DD: "(?<day>\\d{1,2})",
  HH: "(?<hour>\\d{1,2})",
  mm: "(?<minute>\\d{1,2})",
  ss: "(?<second>\\d{1,2}(?:\\.\\d+)?)",
  a: "(?<half>[aApP]\\.?[mM]\\.?)",
};

/** A format such as "MM/DD/YYYY HH:mm" as a pattern with named groups. */
export function timePattern(format: string): RegExp {
  const compact = /^[YMDHms]+$/.test(format);
  const body = format.replace(/YYYY|YY|MMM|MM|DD|HH|mm|ss|a|[.*+?^${}()|[\]\\]/g, (part) => {
    const token = TOKENS[part];
    if (token === undefined) return `\\${part}`;
    return compact ? token.replace("{1,2}", "{2}") : token;
  });
  return new RegExp(`^${compact && format.length <= 2 ? body.replace("{2}", "{1,2}") : body}$`);
}

interface StampReaderInputs {
  readonly parts: readonly { readonly index: number; readonly format: string }[];
  readonly rows: readonly (readonly string[])[];
  readonly firstLine: number;
  readonly columns: ColumnsFile;
}

/** Reader of the stamps of a table, and what was odd about them. */
export interface StampReader {
  /** null where the columns file names no time */
  readonly stamp: TableLayout["stamp"];
  /** what is to be told */
  readonly notices: readonly Notice[];
}

/** Reader of the stamps of a table, as the columns file says. */
export function stampReader(inputs: StampReaderInputs): StampReader {
  const { parts, columns } = inputs;
  if (parts.length === 0) return { stamp: null, notices: [] };
  const patterns = parts.map((part) => ({ ...part, pattern: timePattern(part.format) }));
  const read = (row: readonly string[]) => readParts(row, patterns);
  if (!columns.daylightSaving) return { stamp: read, notices: [] };
  const { isSummer, notices } = summerRows(inputs.rows, read);
  return {
    stamp: (row, line) => {
      const stamp = read(row);
      return isSummer(line - inputs.firstLine) ? { ...stamp, minutes: stamp.minutes - 60 } : stamp;
    },
    notices,
  };
}

/** A column of the time, how it is written, and the same as a pattern. */
export type Pattern = { readonly index: number; readonly format: string; readonly pattern: RegExp };

function readParts(row: readonly string[], patterns: readonly Pattern[]): Stamp {
  const found = timeParts(row, patterns);
  const text = patterns.map((part) => row[part.index]).join(" ");
  const minutes = hourOf(found) * 60 + Number(found.minute ?? 0);
  const stamp = makeStamp(monthOf(found), Number(found.day), minutes, text);
  return found.year === undefined ? stamp : { ...stamp, year: fullYear(found.year) };
}

/**
 * A stamp with the seconds of its minute.
 *
 * @param row cells of the row
 * @param patterns of {@link timePattern}, with the place of their column
 * @throws {StampFault} where the text does not follow the formats or is no moment
 */
export function readMoment(
  row: readonly string[],
  patterns: readonly Pattern[],
): { readonly stamp: Stamp; readonly second: number } {
  const second = Number(timeParts(row, patterns).second ?? 0);
  return { stamp: readParts(row, patterns), second };
}

function timeParts(
  row: readonly string[],
  patterns: readonly Pattern[],
): Record<string, string | undefined> {
  const found: Record<string, string | undefined> = {};
  for (const { index, format, pattern } of patterns) {
    const text = row[index]?.trim() ?? "";
    const match = pattern.exec(text);
    if (match === null) {
      throw new StampFault(
        `Cannot read the time: expected ${format}, found "${text}" in column ${
          index + 1
        }; correct the ` +
          "line, or the format in the columns file",
      );
    }
    for (const [key, value] of Object.entries(match.groups ?? {})) found[key] = value;
  }
  return found;
}

/** Month by its number, or by the first three letters of its English name. */
function monthOf(found: Record<string, string | undefined>): number {
  if (found.name === undefined) return Number(found.month);
  const letters = found.name.slice(0, 3).toLowerCase();
  return MONTH_NAMES.findIndex((month) => month.toLowerCase().startsWith(letters)) + 1;
}

/** Two digits are years from 1970 to 2069. */
function fullYear(text: string): number {
  const year = Number(text);
  if (text.length === 4) return year;
  return year < 70 ? 2000 + year : 1900 + year;
}

function hourOf(found: Record<string, string | undefined>): number {
  const hour = Number(found.hour ?? 0);
  if (found.half === undefined) return hour;
  return hour % 12 + (/^p/i.test(found.half) ? 12 : 0);
}

interface SummerRows {
  readonly isSummer: (row: number) => boolean;
  readonly notices: readonly Notice[];
}

/** Which rows follow summer time: from the row after the skipped hour to the second of the doubled. */
function summerRows(
  rows: readonly (readonly string[])[],
  read: (row: readonly string[]) => Stamp,
): SummerRows {
  const stamps = rows.map((cells) => readable(cells, read));
  const usual = (stamps[1]?.minutes ?? 60) - (stamps[0]?.minutes ?? 0);
  let [jump, repeat] = [-1, -1];
  for (let row = 1; row < stamps.length; row++) {
    const [before, stamp] = [stamps[row - 1] ?? null, stamps[row] ?? null];
    if (before === null || stamp === null) continue;
    if (before.month !== stamp.month || before.day !== stamp.day) continue;
    const step = stamp.minutes - before.minutes;
    if (step === usual + 60 && jump === -1) jump = row;
    if (step === usual - 60 && repeat === -1) repeat = row;
  }
  if (jump === -1 || repeat === -1) {
    return { isSummer: () => false, notices: [noClockChange(jump !== -1, repeat !== -1)] };
  }
  const isSummer = jump < repeat
    ? (row: number) => row >= jump && row < repeat
    : (row: number) => row >= jump || row < repeat;
  return { isSummer, notices: [] };
}

/** Which of the two clock changes the stamps lack. */
function noClockChange(jump: boolean, repeat: boolean): Notice {
  const lacking = jump
    ? "no hour is doubled in autumn"
    : repeat
    ? "no hour is skipped in spring"
    : "no hour is skipped in spring and none doubled in autumn";
  return notice(
    "warning",
    "climate",
    `The columns file says daylightSaving: yes, but ${lacking}: all stamps are taken as standard ` +
      "time. Write daylightSaving: no where that is right; else export the file in standard time",
  );
}

/** The stamp of a row; null where it cannot be read, which is told when the row is placed. */
export function readable(
  cells: readonly string[],
  read: (row: readonly string[]) => Stamp,
): Stamp | null {
  try {
    return read(cells);
  } catch (error) {
    if (error instanceof StampFault) return null;
    throw error;
  }
}
