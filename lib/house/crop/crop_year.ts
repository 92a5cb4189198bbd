/** What a year of air temperatures means to a crop. @module */
import { type YearBelow, yearBelow } from "../../basics/series/limits.ts";
import type { Crop } from "./crop_table.ts";

/** A year below each of a crop's limits, and below freezing. */
export interface CropYear {
  /** below 0 degC */
  readonly freezing: YearBelow;
  /** below the temperature at which plants die */
  readonly killing: YearBelow;
  /** below the temperature at which plants are damaged */
  readonly damage: YearBelow;
  /** below the temperature at which growth stops */
  readonly growth: YearBelow;
}

/**
 * Counts a year against the limits of a crop.
 *
 * @param air degC, 8760 hourly values of the air at the plants
 * @param crop row of `data/crops/crops.csv`
 */
export function cropYear(air: Float64Array, crop: Crop): CropYear {
  return {
    freezing: yearBelow(air, 0),
    killing: yearBelow(air, crop.killingLimit),
    damage: yearBelow(air, crop.damageLimit),
    growth: yearBelow(air, crop.growthLimit),
  };
}
