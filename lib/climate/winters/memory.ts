/** Day-to-day memory of the weather over a winter. @module */
import { HOURS_PER_YEAR } from "../../basics/mod.ts";

/** Fast part: an autoregression of second order, fitted to two daily records (docs/climate.md). */
const FAST = [0.751, -0.161] as const;
/** Slow part: autoregression of first order; months that are mild or hard as a whole. */
const SLOW = 0.96;
/** Share of the slow part in the variance where nothing is known of the place. */
export const USUAL_SLOW_SHARE = 0.2;
/** Days run before those that count, until the start is forgotten. */
const WARM_UP = 200;

/** Correlation of the fast part with itself, by lag in days. */
function fastCorrelation(days: number): number[] {
  const [one, two] = FAST;
  const list = [1, one / (1 - two)];
  for (let lag = 2; lag < days; lag++) list.push(one * list[lag - 1]! + two * list[lag - 2]!);
  return list;
}

/**
 * Share of the variance of daily values that a mean over some days keeps.
 *
 * Var(mean)/Var = (1/n)(1 + 2 Σ (1 − k/n) r_k)
 *
 * @param correlation r by lag in days, at least `days` of them
 * @param days n, a count
 * @returns share, 0 to 1
 */
function keptByMean(correlation: readonly number[], days: number): number {
  let together = 1;
  for (let lag = 1; lag < days; lag++) together += 2 * (1 - lag / days) * correlation[lag]!;
  return together / days;
}

const MONTH = 31;
const FAST_KEPT = keptByMean(fastCorrelation(MONTH), MONTH);
const SLOW_KEPT = keptByMean(Array.from({ length: MONTH }, (_, lag) => SLOW ** lag), MONTH);

/**
 * Share of the variance of daily values that lies between the means of months of different years.
 *
 * @param slowShare share of the slow part, 0 to 1
 * @returns share, 0 to 1
 */
export function shareBetweenMonths(slowShare: number): number {
  return (1 - slowShare) * FAST_KEPT + slowShare * SLOW_KEPT;
}

/**
 * Slow part that gives published deviations of monthly means.
 *
 * With R = (s/w)², the share between months is v = R/(R + 30/31), and v is straight in the slow part.
 *
 * @param between K, standard deviation of the means of one month over the years
 * @param within K, standard deviation of daily means within the month
 * @returns share of the slow part, held to 0 to 0.6
 */
export function slowShareFor(between: number, within: number): number {
  const ratio = (between / within) ** 2;
  const wanted = ratio / (ratio + (MONTH - 1) / MONTH);
  const share = (wanted - FAST_KEPT) / (SLOW_KEPT - FAST_KEPT);
  return Math.min(0.6, Math.max(0, share));
}

/**
 * A winter of daily values with unit variance, without a break anywhere between its ends.
 *
 * z = √(1 − f) a + √f b, a of second order with 0.751 and −0.161, b of first order with 0.96
 *
 * @param slowShare f, 0 to 1
 * @param draws of the fast and of the slow part
 * @param days count of values
 * @returns the values
 */
export function dailyMemory(
  slowShare: number,
  draws: { readonly fast: () => number; readonly slow: () => number },
  days: number = HOURS_PER_YEAR / 24 + 2,
): Float64Array {
  const [one, two] = FAST;
  const [, first, second] = fastCorrelation(3);
  const fastInnovation = Math.sqrt(1 - one * first! - two * second!);
  const slowInnovation = Math.sqrt(1 - SLOW ** 2);
  const series = new Float64Array(days);
  let [fast, before, slow] = [0, 0, draws.slow()];
  for (let day = -WARM_UP; day < days; day++) {
    [fast, before] = [one * fast + two * before + fastInnovation * draws.fast(), fast];
    slow = SLOW * slow + slowInnovation * draws.slow();
    if (day >= 0) series[day] = Math.sqrt(1 - slowShare) * fast + Math.sqrt(slowShare) * slow;
  }
  return series;
}
