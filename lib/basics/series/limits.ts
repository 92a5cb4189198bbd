/** Hours of a year below a limit: how many, the first, the last. @module */
import { sum } from "d3-array";
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

/**
 * Longest run of hours below a limit; the run may go over the year's end.
 *
 * @param series hourly values
 * @param limit same unit
 * @returns h; all hours where every hour is below
 */
export function longestSpellBelow(series: Float64Array, limit: number): number {
  let [longest, run] = [0, 0];
  for (let i = 0; i < 2 * series.length; i++) {
    run = series[i % series.length]! < limit ? run + 1 : 0;
    if (run > longest) longest = run;
  }
  return Math.min(longest, series.length);
}

/**
 * Degree-hours below a limit, such as a crop's lowest temperature: Σ max(0, limit - temperature).
 *
 * Source: exact, definition.
 *
 * @param temperatures hourly, degC
 * @param limit degC
 * @returns K h
 */
export function degreeHoursBelow(temperatures: Float64Array, limit: number): number {
  return sum(temperatures, (temperature) => Math.max(0, limit - temperature));
}

/** A year of hours against one limit. */
export interface YearBelow {
  /** degC */
  readonly limit: number;
  /** h below it */
  readonly hours: number;
  /** K h below it */
  readonly degreeHours: number;
  /** hour index of the first hour below it from 1 July on; null where there is none */
  readonly first: number | null;
  /** hour index of the last hour below it before the next 1 July; null where there is none */
  readonly last: number | null;
  /** h of the longest run below it */
  readonly longestSpell: number;
}

/** Counts a year of temperatures, degC, against one limit, degC. */
export function yearBelow(series: Float64Array, limit: number): YearBelow {
  return {
    limit,
    hours: hoursBelow(series, limit),
    degreeHours: degreeHoursBelow(series, limit),
    first: firstHourBelow(series, limit),
    last: lastHourBelow(series, limit),
    longestSpell: longestSpellBelow(series, limit),
  };
}
