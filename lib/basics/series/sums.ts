/** Sums and means of an hourly series by day and by month. @module */
import { mean, sum } from "d3-array";
import { HOUR, kilowattHours } from "../constants.ts";
import { MONTH_FIRST_DAYS, MONTH_FIRST_HOURS } from "./calendar.ts";

/**
 * Mean of each whole day.
 *
 * @param series hourly, any unit; hours after the last whole day are left out
 * @returns one value a day, same unit
 */
export function dailyMeans(series: Float64Array): Float64Array {
  const days = Math.floor(series.length / 24);
  return Float64Array.from(
    { length: days },
    (_, day) => sum(series.subarray(day * 24, day * 24 + 24)) / 24,
  );
}

/**
 * Hours of one month of a year.
 *
 * @param series 8760 hourly values
 * @param month 0 to 11
 * @returns view of the same values
 */
export function hoursOfMonth(series: Float64Array, month: number): Float64Array {
  return series.subarray(MONTH_FIRST_HOURS[month], MONTH_FIRST_HOURS[month + 1]);
}

/**
 * Sum of each month.
 *
 * @param series 8760 hourly values, any unit
 * @returns 12 sums, that unit times hours
 */
export function monthlySums(series: Float64Array): number[] {
  return Array.from({ length: 12 }, (_, month) => sum(hoursOfMonth(series, month)));
}

/**
 * Mean of each month.
 *
 * @param series 8760 hourly values, any unit
 * @returns 12 means, same unit
 */
export function monthlyMeans(series: Float64Array): number[] {
  return Array.from({ length: 12 }, (_, month) => mean(hoursOfMonth(series, month))!);
}

/**
 * Mean of each month of a daily series.
 *
 * @param daily 365 values, or 366 with 29 February, any unit
 * @returns 12 means, same unit
 */
export function monthlyMeansOfDays(daily: Float64Array): number[] {
  const leap = daily.length === 366 ? 1 : 0;
  return Array.from({ length: 12 }, (_, month) => {
    const first = MONTH_FIRST_DAYS[month]! + (month > 1 ? leap : 0);
    const next = MONTH_FIRST_DAYS[month + 1]! + (month > 0 ? leap : 0);
    return mean(daily.subarray(first, next))!;
  });
}

/**
 * Heat of each month.
 *
 * @param series 8760 hourly mean heat flows, W
 * @returns 12 sums, kWh
 */
export function monthlyHeat(series: Float64Array): number[] {
  return monthlySums(series).map((total) => kilowattHours(total * HOUR));
}
