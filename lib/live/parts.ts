/** What is known of a year, put together from several hands. @module */
import type { LivePart } from "./types.ts";

/** Nothing yet. */
export const UNKNOWN: LivePart = { figures: {}, days: {}, months: {} };

/** Everything that parts of one year know. */
export function together(parts: readonly LivePart[]): LivePart {
  return {
    figures: Object.assign({}, ...parts.map(({ figures }) => figures)),
    days: Object.assign({}, ...parts.map(({ days }) => days)),
    months: Object.assign({}, ...parts.map(({ months }) => months)),
  };
}
