/** What a sample says of one figure. @module */
import type { SampledEffects } from "../../worth/mod.ts";
import type { FigureColumn } from "./types.ts";

/** One figure of a sampled study. */
export interface FigureDoubt extends SampledEffects {
  /** the figure */
  readonly figure: FigureColumn;
  /** count of samples that have it */
  readonly count: number;
  /** share of the weather in the variance, 0 to 1; null where single winters do not have the figure */
  readonly weather: number | null;
}

/**
 * Half the band of a figure over its value, a ratio: for the heat saved, what `worth.doubtHeatSaved` asks
 * for, of a single year. Null where the figure is no number or 0.
 */
export function halfBand({ figure: { unchanged }, band: [low, high] }: FigureDoubt): number | null {
  return typeof unchanged !== "number" || unchanged === 0
    ? null
    : (high - low) / 2 / Math.abs(unchanged);
}
