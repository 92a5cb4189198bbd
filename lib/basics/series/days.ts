/** Days of an hourly series: lowest, mean and highest, and the week around the lowest hour. @module */
import { dailyMeans } from "./sums.ts";

/** Lowest, mean and highest value of one day, in the unit of the series. */
export interface DayRange {
  /** lowest hour of the day */
  readonly low: number;
  /** mean of the day */
  readonly mean: number;
  /** highest hour of the day */
  readonly high: number;
}

/**
 * Lowest, mean and highest value of each whole day.
 *
 * @param series hourly, any unit; hours after the last whole day are left out
 * @returns one entry a day, same unit
 */
export function dayRanges(series: Float64Array): DayRange[] {
  return Array.from(dailyMeans(series), (mean, day) => {
    const hours = series.subarray(day * 24, day * 24 + 24);
    return { low: Math.min(...hours), mean, high: Math.max(...hours) };
  });
}

/**
 * First hour of the week of whole days around the lowest hour: three days before its day and three
 * after, moved into the series where it would stand out.
 *
 * @param series hourly, a week or more
 * @returns hour index, a midnight
 */
export function weekAroundLowest(series: Float64Array): number {
  let lowest = 0;
  for (let hour = 1; hour < series.length; hour++) {
    if (series[hour]! < series[lowest]!) lowest = hour;
  }
  const start = Math.floor(lowest / 24) * 24 - 72;
  return Math.min(Math.max(start, 0), series.length - 168);
}
