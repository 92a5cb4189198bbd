/** Is the year sound? @module */
import type { Notice } from "../basics/mod.ts";
import type { ClimateYear } from "./types.ts";

/** Quality report of a climate year. */
export interface ClimateQuality {
  readonly notices: readonly Notice[];
}

/** Looks for what cannot be true in a year. */
export function climateQuality(_year: ClimateYear): ClimateQuality {
  return { notices: [] };
}
