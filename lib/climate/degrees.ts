/** Degree-days, degree-hours and design temperatures of an hourly series. @module */
import { quantile, sum } from "d3-array";
import { dailyMeans } from "../basics/mod.ts";

/**
 * Degree-days below a base, from daily means: Σ max(0, base - mean of the day).
 *
 * Source: exact, definition.
 *
 * @param temperatures hourly, degC
 * @param base degC
 * @returns K d
 */
export function degreeDaysBelow(temperatures: Float64Array, base: number): number {
  return sum(dailyMeans(temperatures), (daily) => Math.max(0, base - daily));
}

/** Share of the hours of a year that are colder than the design temperature of heating. */
const DESIGN_SHARE = 0.004;

/**
 * Temperature that a share of the hours is colder than, straight between ranks (R type 7).
 *
 * @param temperatures hourly, degC
 * @param share of the hours, 0 to 1; {@link DESIGN_SHARE} unless given
 * @returns degC
 */
export function designTemperature(temperatures: Float64Array, share = DESIGN_SHARE): number {
  return quantile(temperatures, share)!;
}
