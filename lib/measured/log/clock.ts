/** The moments of rows: what a logger's clock said, and where it jumped. @module */
import { StampFault } from "../../climate/read/stamp.ts";
import { type Pattern, readMoment, timePattern } from "../../climate/read/time_format.ts";

/** A moment as a row tells it. */
export interface RowMoment {
  /** s since 1970 of the logger's own clock, taken as if it were UTC; UTC itself where `utc` */
  readonly seconds: number;
  /** true where the text names its distance from UTC */
  readonly utc: boolean;
}

const ISO =
  /^(\d{4})-(\d{2})-(\d{2})(?:[T ]+(\d{1,2}):(\d{2})(?::(\d{2})(?:[.,]\d+)?)?)?\s*(Z|UTC|[+-]\d{2}:?\d{2})?$/;

/**
 * Reads a date and time such as 2026-01-31 14:05, 2026-01-31T14:05:00Z or 2026-01-31.
 *
 * @param text of the cell
 * @returns null where it is no such text or no moment
 */
export function isoSeconds(text: string): RowMoment | null {
  const found = ISO.exec(text.trim());
  if (found === null) return null;
  const [, year, month, day, hour, minute, second, zone] = found;
  const seconds = dateSeconds(Number(year), Number(month), Number(day));
  const clock = Number(hour ?? 0) * 3600 + Number(minute ?? 0) * 60 + Number(second ?? 0);
  if (seconds === null || clock > 86400 || Number(minute ?? 0) > 59 || Number(second ?? 0) > 60) {
    return null;
  }
  if (zone === undefined) return { seconds: seconds + clock, utc: false };
  const [, sign, hours, minutes] = /^([+-])(\d{2}):?(\d{2})$/.exec(zone) ?? [];
  const east = sign === undefined
    ? 0
    : (sign === "-" ? -1 : 1) * (Number(hours) * 3600 + Number(minutes) * 60);
  return { seconds: seconds + clock - east, utc: true };
}

/** s since 1970 of a date at 0:00; null for one that is none. */
function dateSeconds(year: number, month: number, day: number): number | null {
  const time = Date.UTC(year, month - 1, day);
  const date = new Date(time);
  const same = date.getUTCFullYear() === year && date.getUTCMonth() === month - 1 &&
    date.getUTCDate() === day;
  return same ? time / 1000 : null;
}

/** A column of the time by its place. */
export interface PlacedTime {
  /** place of the column, from 0 */
  readonly index: number;
  /** as in a columns file; "" for 2026-01-31 14:05 */
  readonly format: string;
}

/**
 * Reader of the moments of rows.
 *
 * @param parts columns of the time and how they are written
 * @returns the moment of a row, or what is wrong with it
 */
export function momentReader(
  parts: readonly PlacedTime[],
): (cells: readonly string[]) => RowMoment | string {
  if (parts.length === 1 && parts[0]!.format === "") {
    const { index } = parts[0]!;
    return (cells) =>
      isoSeconds(cells[index] ?? "") ??
        `Cannot read the time: expected one such as 2026-01-31 14:05, found "${
          cells[index] ?? ""
        }"; correct the cell, or give its format under time in the log map`;
  }
  const patterns: Pattern[] = parts.map((part) => ({ ...part, pattern: timePattern(part.format) }));
  return (cells) => {
    try {
      const { stamp, second } = readMoment(cells, patterns);
      if (stamp.year === undefined) {
        return "Cannot read the time: its format has no year (YYYY or YY); add it in the log map";
      }
      const day = dateSeconds(stamp.year, stamp.month, stamp.day);
      return day === null
        ? `Cannot read the time: ${stamp.year} has no such day; correct the line`
        : { seconds: day + stamp.minutes * 60 + second, utc: false };
    } catch (error) {
      if (error instanceof StampFault) {
        return error.message.replace("columns file", "log map");
      }
      throw error;
    }
  };
}
