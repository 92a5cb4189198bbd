/** Moments of a log in words. @module */
import { HOUR } from "../../basics/mod.ts";

/**
 * "2025-11-03 14:05" by the house's standard time.
 *
 * @param seconds since 1970 UTC
 * @param timeZone hours east of UTC
 */
export function momentText(seconds: number, timeZone: number): string {
  return new Date(1000 * (seconds + HOUR * timeZone)).toISOString().slice(0, 16).replace("T", " ");
}
