/** Spans of days and of hours as people write them: `15 Aug to 30 Apr`, `17:00 to 8:00`. @module */
import { MONTH_DAYS } from "../basics/constants.ts";
import { MONTH_ABBREVIATIONS, MONTH_FIRST_DAYS } from "../basics/series/calendar.ts";
import { matchWord } from "./words.ts";
import { QuantityError } from "./quantity.ts";

const DAYS = 365;

const WORDS = ["all year", "never"] as const;
/** Blanks beside it are cut from the ends: sought here they take the square of their number. */
const BETWEEN = /\bto\b|\buntil\b|[-\u2013]/i;

/** A day of a month: both counted from 1. */
interface Day {
  readonly day: number;
  readonly month: number;
}

function readDay(text: string): Day | undefined {
  const [, before, name, after] =
    /^(?:(\d{1,2})\.?\s+)?([a-z]{3,})\.?(?:\s+(\d{1,2})\.?)?$/i.exec(text.trim()) ?? [];
  if (name === undefined || (before === undefined) === (after === undefined)) return undefined;
  const month = 1 +
    MONTH_ABBREVIATIONS.findIndex((known) =>
      known.toLowerCase() === name.slice(0, 3).toLowerCase()
    );
  const day = Number(before ?? after);
  return month > 0 && day >= 1 && day <= MONTH_DAYS[month - 1]! ? { day, month } : undefined;
}

const dayText = ({ day, month }: Day): string => `${day} ${MONTH_ABBREVIATIONS[month - 1]}`;

function readSpan<T>(
  text: unknown,
  read: (end: string) => T | undefined,
): readonly [T, T] | undefined {
  const ends = String(text).split(BETWEEN).map(read);
  const [from, to] = ends;
  return ends.length === 2 && from !== undefined && to !== undefined ? [from, to] : undefined;
}

/**
 * Reads a span of days: `15 Aug to 30 Apr`, `all year` or `never`. Both ends belong to it; it may go
 * over the turn of the year.
 *
 * @example
 * ```ts
 * import { assertEquals } from "@std/assert";
 * import { readSeason } from "./season.ts";
 *
 * assertEquals(readSeason("August 15 until April 30"), "15 Aug to 30 Apr");
 * ```
 *
 * @param text what the user wrote
 * @returns the same, written in one way
 * @throws {QuantityError} where it is no such span
 */
export function readSeason(text: unknown): string {
  const word = matchWord(text, WORDS);
  if (word !== undefined) return word;
  const span = readSpan(text, readDay);
  if (span === undefined) {
    throw new QuantityError(
      `expected days such as 15 Aug to 30 Apr, all year, or never; found ${text}`,
    );
  }
  return span.map(dayText).join(" to ");
}

function dayOfYear({ day, month }: Day): number {
  return MONTH_FIRST_DAYS[month - 1]! + day - 1;
}

/**
 * The days of a span.
 *
 * @param season as {@link readSeason} writes it
 * @returns 1 for each of 365 days that belongs to it, else 0
 */
export function seasonDays(season: string): Uint8Array {
  const word = matchWord(season, WORDS);
  if (word !== undefined) return new Uint8Array(DAYS).fill(word === "never" ? 0 : 1);
  const [from, to] = readSpan(season, readDay)!.map(dayOfYear) as [number, number];
  const length = (to - from + DAYS) % DAYS;
  return Uint8Array.from(
    { length: DAYS },
    (_, day) => (day - from + DAYS) % DAYS <= length ? 1 : 0,
  );
}

/** Hours after midnight; undefined where the text is no time of the day. */
function readClock(text: string): number | undefined {
  const [, hour, minute, half] = /^(\d{1,2})(?::([0-5]\d))?\s*(?:h|(am|pm))?$/i.exec(text.trim()) ??
    [];
  if (hour === undefined) return undefined;
  const noon = half === undefined ? 0 : half.toLowerCase() === "pm" ? 12 : 0;
  const whole = half === undefined ? Number(hour) : Number(hour) % 12 + noon;
  return whole < 24 && (half === undefined || Number(hour) <= 12)
    ? whole + Number(minute ?? 0) / 60
    : undefined;
}

function clockText(hours: number): string {
  const minutes = Math.round(60 * hours);
  return `${Math.floor(minutes / 60)}:${String(minutes % 60).padStart(2, "0")}`;
}

/**
 * Reads a span of hours of the day: `17:00 to 8:00`, or `none`.
 *
 * @example
 * ```ts
 * import { assertEquals } from "@std/assert";
 * import { readClockSpan } from "./season.ts";
 *
 * assertEquals(readClockSpan("5 pm to 8:30 am"), "17:00 to 8:30");
 * ```
 *
 * @param text what the user wrote
 * @returns the same, written in one way
 * @throws {QuantityError} where it is no such span
 */
export function readClockSpan(text: unknown): string {
  if (matchWord(text, ["none"]) !== undefined) return "none";
  const span = readSpan(text, readClock);
  if (span === undefined || span[0] === span[1]) {
    throw new QuantityError(
      `expected two times of the day such as 17:00 to 8:00, or none; found ${text}`,
    );
  }
  return span.map(clockText).join(" to ");
}

/**
 * A time of the day in hours.
 *
 * @param text as {@link readClockSpan} writes its ends
 * @returns h after midnight
 */
export function hourOfClock(text: string): number {
  const hours = readClock(text);
  if (hours === undefined) {
    throw new QuantityError(`expected a time of the day such as 17:00; found ${text}`);
  }
  return hours;
}

/**
 * The share of each hour of the day that lies in a span.
 *
 * @param span as {@link readClockSpan} writes it, not none
 * @returns 24 shares, 0 to 1, from midnight on
 */
export function clockShares(span: string): Float64Array {
  const [from, to] = span.split(" to ").map(hourOfClock) as [number, number];
  const inside = (low: number, high: number, hour: number) =>
    Math.max(0, Math.min(high, hour + 1) - Math.max(low, hour));
  return Float64Array.from(
    { length: 24 },
    (_, hour) => from < to ? inside(from, to, hour) : inside(from, 24, hour) + inside(0, to, hour),
  );
}
