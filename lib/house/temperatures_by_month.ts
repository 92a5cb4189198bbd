/** Coldest and warmest hours month by month. @module */
import { hoursOfMonth } from "../basics/mod.ts";

/** Extremes of one month, degC. */
export interface TemperatureMonth {
  /** 0 to 11 */
  readonly month: number;
  /** degC, lowest hour outdoors */
  readonly outdoorsLowest: number;
  /** degC, lowest hour in the house */
  readonly insideLowest: number;
  /** degC, highest hour in the house */
  readonly insideHighest: number;
}

/**
 * Lowest hour of each month outdoors and in the house, and the house's highest.
 *
 * @param outdoors 8760 hourly values, degC
 * @param inside 8760 hourly values, degC
 */
export function temperaturesByMonth(
  outdoors: Float64Array,
  inside: Float64Array,
): TemperatureMonth[] {
  return Array.from({ length: 12 }, (_, month) => ({
    month,
    outdoorsLowest: Math.min(...hoursOfMonth(outdoors, month)),
    insideLowest: Math.min(...hoursOfMonth(inside, month)),
    insideHighest: Math.max(...hoursOfMonth(inside, month)),
  }));
}
