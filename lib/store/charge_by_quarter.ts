/** How full the store is, quarter by quarter. @module */
import { MONTH_FIRST_HOURS } from "../basics/mod.ts";
import { max, mean, min } from "d3-array";

/** State of charge in one quarter, 0 (coldest of the year) to 1 (warmest). */
export interface QuarterCharge {
  /** 0 to 1 */
  readonly lowest: number;
  /** 0 to 1 */
  readonly mean: number;
  /** 0 to 1 */
  readonly highest: number;
}

/**
 * Lowest, mean and highest state of charge of each quarter.
 *
 * @param stateOfCharge 8760 hourly values, 0 to 1
 */
export function chargeByQuarter(stateOfCharge: Float64Array): QuarterCharge[] {
  return [0, 1, 2, 3].map((quarter) => {
    const own = stateOfCharge.subarray(
      MONTH_FIRST_HOURS[3 * quarter],
      MONTH_FIRST_HOURS[3 * quarter + 3],
    );
    return { lowest: min(own)!, mean: mean(own)!, highest: max(own)! };
  });
}
