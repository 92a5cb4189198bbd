/** The first years after building beside the year that repeats. @module */
import type { EarlyYear, StoreResult } from "./types.ts";

/** One year after building. */
export interface FirstYear {
  /** 1, 2, 3 …; for the last row the year from about which the year repeats */
  readonly year: number;
  /** true for the year that repeats */
  readonly repeats: boolean;
  /** true where it begins under a house that has stood for years, not in open ground */
  readonly standing: boolean;
  /** kWh put in */
  readonly heatIn: number;
  /** kWh given back */
  readonly heatOut: number;
  /** heat given back over that of the year that repeats; null where that gives nothing back */
  readonly share: number | null;
}

/**
 * A year after building beside the year that repeats.
 *
 * @param early sums of the year, kWh
 * @param heatOut kWh given back in the year that repeats
 * @param standing whether it begins under a house that has stood for years
 */
export function firstYear(early: EarlyYear, heatOut: number, standing: boolean): FirstYear {
  return {
    ...early,
    repeats: false,
    standing,
    share: heatOut > 0 ? early.heatOut / heatOut : null,
  };
}

/**
 * The first years as they come, and the year that repeats last.
 *
 * @param result years and sums of the store chapter, kWh
 */
export function firstYears(
  result: Pick<StoreResult, "earlyYears" | "yearsUntilPeriodic" | "heatIn" | "heatOut">,
): FirstYear[] {
  const { heatIn, heatOut, earlyYears } = result;
  const year = Math.max(result.yearsUntilPeriodic, earlyYears.length) + 1;
  return [
    ...earlyYears.map((early) => firstYear(early, heatOut, false)),
    { ...firstYear({ year, heatIn, heatOut }, heatOut, false), repeats: true },
  ];
}
