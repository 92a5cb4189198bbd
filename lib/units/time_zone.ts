/** Time zones as people write them: `-6`, `UTC-6`, `MST`. @module */
import { QuantityError } from "./quantity.ts";

/** Hours east of UTC of standard times. Source: IANA time zone database [iana-tz-web]. */
const STANDARD: Readonly<Record<string, number>> = {
  UTC: 0,
  Z: 0,
  NST: -3.5,
  AST: -4,
  EST: -5,
  CST: -6,
  MST: -7,
  PST: -8,
  AKST: -9,
  HST: -10,
  GMT: 0,
  WET: 0,
  CET: 1,
  MEZ: 1,
  EET: 2,
  MSK: 3,
};

/** Summer times, with the standard time of the same place. Source: IANA time zone database [iana-tz-web]. */
const SUMMER: Readonly<Record<string, string>> = {
  NDT: "NST",
  ADT: "AST",
  EDT: "EST",
  CDT: "CST",
  MDT: "MST",
  PDT: "PST",
  AKDT: "AKST",
  HDT: "HST",
  WEST: "WET",
  CEST: "CET",
  MESZ: "MEZ",
  EEST: "EET",
};

/** Names that mean several things, with what to write for each. Source: IANA time zone database [iana-tz-web]. */
const AMBIGUOUS: Readonly<Record<string, string>> = {
  IST:
    "UTC+5:30 for India, UTC+2 for Israel, UTC+0 for Ireland (UTC+1 is its daylight-saving time)",
  BST: "GMT for Britain (BST is its daylight-saving time), UTC+6 for Bangladesh",
  AT: "AST (UTC-4) for Atlantic time",
  ET: "EST (UTC-5) for Eastern time",
  CT: "CST (UTC-6) for Central time",
  MT: "MST (UTC-7) for Mountain time",
  PT: "PST (UTC-8) for Pacific time",
};

const OFFSET = /^(?:UTC|GMT|Z)?\s*([+-])?\s*(\d{1,2})(?::?([0-5]\d)|(\.\d+))?$/;

/**
 * Reads a time zone: hours east of UTC (`-6`, `5.5`), an offset (`UTC-6`, `UTC+05:30`) or the
 * abbreviation of a standard time of North America or Europe (`MST`, `CET`).
 *
 * CST and PST are those of North America; other places that use these letters lie so far away that
 * the longitude of the place tells them apart.
 *
 * @example
 * ```ts
 * import { assertEquals } from "@std/assert";
 * import { readTimeZone } from "./time_zone.ts";
 *
 * assertEquals(readTimeZone("MST"), -7);
 * assertEquals(readTimeZone("UTC+05:30"), 5.5);
 * ```
 *
 * @param text what the user wrote
 * @returns hours east of UTC, of any size
 * @throws {QuantityError} for summer times and for names that mean several things, with the choices
 */
export function readTimeZone(text: string | number): number {
  const found = String(text).trim();
  const name = found.toUpperCase().replaceAll(/[\u2212\u2013]/g, "-");
  const standard = STANDARD[name];
  if (standard !== undefined) return standard;
  const usual = SUMMER[name];
  if (usual !== undefined) {
    throw unreadable(
      `${found}, which is daylight-saving time: write the standard time, ${usual} or ${
        utc(STANDARD[usual]!)
      }`,
    );
  }
  const choices = AMBIGUOUS[name];
  if (choices !== undefined) throw unreadable(`${found}, which is ambiguous: write ${choices}`);
  const [, sign, hours, minutes, part] = OFFSET.exec(name) ?? [];
  if (hours === undefined) throw unreadable(found === "" ? "nothing" : `"${found}"`);
  const size = Number(hours + (part ?? "")) + Number(minutes ?? 0) / 60;
  return sign === "-" ? -size : size;
}

function utc(hours: number): string {
  const size = Math.abs(hours);
  const minutes = Math.round((size % 1) * 60);
  return `UTC${hours < 0 ? "-" : "+"}${Math.floor(size)}${
    minutes === 0 ? "" : `:${String(minutes).padStart(2, "0")}`
  }`;
}

function unreadable(found: string): QuantityError {
  return new QuantityError(
    `expected a time zone such as UTC-6, UTC+5:30 or MST; found ${found}`,
  );
}
