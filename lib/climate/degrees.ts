/** Days, degree-days and degree-hours of an hourly series. @module */
import { sum } from "d3-array";

/** Means of the days of an hourly series. */
export function dailyMeans(series: Float64Array): Float64Array {
  const days = Math.floor(series.length / 24);
  return Float64Array.from(
    { length: days },
    (_, day) => sum(series.subarray(day * 24, day * 24 + 24)) / 24,
  );
}

/**
 * Degree-days below a base, from daily means: Σ max(0, base - mean of the day).
 *
 * @param temperatures hourly, degC
 * @param base degC
 * @returns K d
 */
export function degreeDaysBelow(temperatures: Float64Array, base: number): number {
  return sum(dailyMeans(temperatures), (daily) => Math.max(0, base - daily));
}

/**
 * Degree-hours below a limit, such as a crop's lowest temperature: Σ max(0, limit - temperature).
 *
 * @param temperatures hourly, degC
 * @param limit degC
 * @returns K h
 */
export function degreeHoursBelow(temperatures: Float64Array, limit: number): number {
  return sum(temperatures, (temperature) => Math.max(0, limit - temperature));
}

/** Hours below a limit. */
export function hoursBelow(temperatures: Float64Array, limit: number): number {
  return temperatures.reduce((count, temperature) => count + (temperature < limit ? 1 : 0), 0);
}
