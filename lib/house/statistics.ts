/** What growers ask of a year of temperatures. @module */
import { HOUR, KILOWATT_HOUR, MONTH_DAYS } from "../basics/mod.ts";

/** Hour index of 1 July 00:00, the turn of the growing year. */
export const FIRST_OF_JULY = 181 * 24;

/** Value exceeded in a share of the entries, straight between ranks. */
export function exceededIn(series: Float64Array, share: number): number {
  const sorted = series.toSorted();
  const at = (1 - share) * (sorted.length - 1);
  const low = Math.floor(at);
  const high = Math.min(sorted.length - 1, low + 1);
  return sorted[low]! + (at - low) * (sorted[high]! - sorted[low]!);
}

/** Entries below a limit. */
export function hoursBelow(series: Float64Array, limit: number): number {
  return series.reduce((count, value) => count + (value < limit ? 1 : 0), 0);
}

/** First hour below a limit from 1 July on, through the year's end; null where there is none. */
export function firstHourBelow(series: Float64Array, limit: number): number | null {
  for (let i = 0; i < series.length; i++) {
    const hour = (FIRST_OF_JULY + i) % series.length;
    if (series[hour]! < limit) return hour;
  }
  return null;
}

/** Last hour below a limit before the next 1 July; null where there is none. */
export function lastHourBelow(series: Float64Array, limit: number): number | null {
  for (let i = 1; i <= series.length; i++) {
    const hour = (FIRST_OF_JULY - i + series.length) % series.length;
    if (series[hour]! < limit) return hour;
  }
  return null;
}

/** Sums of an hourly series by month. */
export function monthlySums(series: Float64Array): number[] {
  let hour = 0;
  return MONTH_DAYS.map((days) => {
    let sum = 0;
    for (const end = hour + days * 24; hour < end; hour++) sum += series[hour]!;
    return sum;
  });
}

/** kWh by month of hourly heat flows in W. */
export function monthlyHeat(series: Float64Array): number[] {
  return monthlySums(series).map((sum) => sum * HOUR / KILOWATT_HOUR);
}

/** First hour of the run of hours with the lowest mean, through the year's end. */
export function coldestRun(series: Float64Array, hours: number): number {
  let sum = 0;
  for (let i = 0; i < hours; i++) sum += series[i]!;
  let [best, start] = [sum, 0];
  for (let i = 1; i < series.length; i++) {
    sum += series[(i + hours - 1) % series.length]! - series[i - 1]!;
    if (sum < best) [best, start] = [sum, i];
  }
  return start;
}

/** Values in falling order with the share of the year they are reached, as a duration curve. */
export function durationCurve(
  series: Float64Array,
  points: number,
): readonly { readonly share: number; readonly value: number }[] {
  const sorted = series.toSorted().reverse();
  return Array.from({ length: points }, (_, i) => {
    const share = i / (points - 1);
    return { share, value: sorted[Math.round(share * (sorted.length - 1))]! };
  });
}
