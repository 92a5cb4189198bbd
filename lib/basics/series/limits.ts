/** Hours of a year below a limit: how many, the first, the last. @module */
import { FIRST_OF_JULY } from "./calendar.ts";

/**
 * Hours below a limit.
 *
 * @param series hourly values
 * @param limit same unit; a value equal to it does not count
 * @returns h
 */
export function hoursBelow(series: Float64Array, limit: number): number {
  let hours = 0;
  for (const value of series) if (value < limit) hours++;
  return hours;
}

/**
 * First hour below a limit from 1 July on, over the year's end to the next 1 July.
 *
 * @param series 8760 hourly values
 * @param limit same unit
 * @returns hour index, 0 to 8759; null where there is none
 */
export function firstHourBelow(series: Float64Array, limit: number): number | null {
  for (let i = 0; i < series.length; i++) {
    const hour = (FIRST_OF_JULY + i) % series.length;
    if (series[hour]! < limit) return hour;
  }
  return null;
}

/**
 * Last hour below a limit before the next 1 July, looking back over the year's end.
 *
 * @param series 8760 hourly values
 * @param limit same unit
 * @returns hour index, 0 to 8759; null where there is none
 */
export function lastHourBelow(series: Float64Array, limit: number): number | null {
  for (let i = 1; i <= series.length; i++) {
    const hour = (FIRST_OF_JULY - i + series.length) % series.length;
    if (series[hour]! < limit) return hour;
  }
  return null;
}

/**
 * First hour of the run of hours with the lowest mean; the run may go over the year's end.
 *
 * @param series hourly values
 * @param hours length of the run, h
 * @returns hour index
 */
export function lowestRunStart(series: Float64Array, hours: number): number {
  let sum = 0;
  for (let i = 0; i < hours; i++) sum += series[i]!;
  let [best, start] = [sum, 0];
  for (let i = 1; i < series.length; i++) {
    sum += series[(i + hours - 1) % series.length]! - series[i - 1]!;
    if (sum < best) [best, start] = [sum, i];
  }
  return start;
}
