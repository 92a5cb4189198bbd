/** The one time that a run writes. @module */
import { InputError } from "../../basics/mod.ts";

/** Seconds that a date can hold: up to the year 9999. */
const LATEST = 253_402_300_799;

/**
 * Now, in whole seconds; the time of the variable `SOURCE_DATE_EPOCH`, s since 1970 UTC, where it is
 * set, so that a run can be written again to the byte.
 *
 * @throws {InputError} where the variable holds no such number
 */
export function momentOfRun(): Date {
  const given = Deno.env.get("SOURCE_DATE_EPOCH");
  if (given === undefined || given === "") return new Date(Math.floor(Date.now() / 1000) * 1000);
  const seconds = Number(given);
  if (/^\d+$/.test(given) && seconds <= LATEST) return new Date(seconds * 1000);
  throw new InputError(
    `Cannot use SOURCE_DATE_EPOCH "${given}": expected whole seconds since 1970, from 0 to ${LATEST}`,
  );
}
