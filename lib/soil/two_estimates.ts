/** The two estimates of the undisturbed ground side by side. @module */
import { monthlyWave } from "./ground_wave.ts";
import type { SoilResult } from "./types.ts";

/** One month of the two estimates at tube depth. */
export interface EstimateMonth {
  /** 0 to 11 */
  readonly month: number;
  /** degC, column with surface balance, snow and frost */
  readonly column: number;
  /** degC, annual wave from the air temperature */
  readonly wave: number;
  /** K, column less wave */
  readonly difference: number;
}

/**
 * Both estimates of the undisturbed ground at tube depth, month by month; the column straight
 * between the depths of its table.
 *
 * @param result depths, monthly table, tube depth and climate wave of the soil chapter
 */
export function twoEstimates(
  result: Pick<SoilResult, "depths" | "monthly" | "tubeDepth" | "climateWave">,
): EstimateMonth[] {
  const { depths, tubeDepth } = result;
  const below = Math.max(1, depths.findIndex((depth) => depth >= tubeDepth));
  const [low, high] = [depths[below - 1]!, depths[below]!];
  const share = (tubeDepth - low) / (high - low);
  return monthlyWave(result.climateWave, tubeDepth).map((wave, month) => {
    const at = result.monthly[month]!;
    const column = at[below - 1]! + share * (at[below]! - at[below - 1]!);
    return { month, column, wave, difference: column - wave };
  });
}
