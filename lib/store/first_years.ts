/** The first years after building beside the year that repeats. @module */
import type { StoreResult } from "./types.ts";

/** One year after building. */
export interface FirstYear {
  /** 1, 2, 3 …; for the last row the year from about which the year repeats */
  readonly year: number;
  /** true for the year that repeats */
  readonly repeats: boolean;
  /** kWh put in */
  readonly heatIn: number;
  /** kWh given back */
  readonly heatOut: number;
  /** heat given back over that of the year that repeats; null where that gives nothing back */
  readonly share: number | null;
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
  const settled = Math.max(result.yearsUntilPeriodic, earlyYears.length) + 1;
  const share = (heat: number) => heatOut > 0 ? heat / heatOut : null;
  return [
    ...earlyYears.map((early) => ({ ...early, repeats: false, share: share(early.heatOut) })),
    { year: settled, repeats: true, heatIn, heatOut, share: share(heatOut) },
  ];
}
