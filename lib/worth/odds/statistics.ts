/**
 * Chances and rare values from many winters.
 *
 * @module
 */
import { ascending, quantileSorted } from "d3-array";
import { requireInRange } from "../../basics/mod.ts";

/** A value with a band. */
export interface Banded {
  /** in the same unit as the values */
  readonly value: number;
  /** lower end of the band, in the same unit */
  readonly low: number;
  /** upper end of the band, in the same unit */
  readonly high: number;
}

/** Normal deviate of a two-sided band of 95 %. */
const NINETY_FIVE = 1.959963984540054;

/**
 * Value that a share of the winters stays below, by the place (n + 1)p, with the order-statistic band:
 * the ranks between which the true value lies with a chance, whatever the distribution.
 * The band covers sampling only, not the normals, the model or a changing climate.
 *
 * Source: Weibull plotting position and binomial band of order statistics, from memory.
 *
 * @param values of the winters, at least 5, in any unit
 * @param share p, 1/n to 1 − 1/n
 * @param cover chance that the band holds the true value, 0 to 1
 */
export function rareValue(values: readonly number[], share: number, cover = 0.9): Banded {
  const count = values.length;
  requireInRange("number of winters", count, 5, 1e6, "winters");
  requireInRange("share of the winters", share, 1 / count, 1 - 1 / count, "of all");
  const sorted = values.toSorted(ascending);
  const atRank = (rank: number) => sorted[Math.min(count, Math.max(1, rank)) - 1]!;
  const [low, high] = bandRanks(count, share, (1 - cover) / 2);
  return { value: atPlace(sorted, (count + 1) * share), low: atRank(low), high: atRank(high) };
}

function atPlace(sorted: number[], place: number): number {
  const bounded = Math.min(sorted.length, Math.max(1, place));
  return quantileSorted(sorted, sorted.length === 1 ? 0 : (bounded - 1) / (sorted.length - 1))!;
}

/** Ranks of the band with a chance beyond either end: the number below the true value is binomial. */
function bandRanks(count: number, share: number, out: number): [low: number, high: number] {
  let [below, low, high] = [0, 0, count];
  let chance = (1 - share) ** count;
  for (let rank = 0; rank <= count; rank++) {
    below += chance;
    if (below <= out) low = rank + 1;
    if (below >= 1 - out) {
      high = rank + 1;
      break;
    }
    chance *= (count - rank) / (rank + 1) * share / (1 - share);
  }
  return [Math.max(1, low), Math.min(count, high)];
}

/**
 * Share of winters in which something happens, with its band of 95 %.
 *
 * Source: Wilson 1927 [wilson-1927], from memory.
 *
 * @param happened number of winters in which it did
 * @param count number of winters
 * @returns shares, 0 to 1
 */
export function chance(happened: number, count: number): Banded {
  requireInRange("number of winters", count, 1, 1e9, "winters");
  requireInRange("winters in which it happened", happened, 0, count, "winters");
  const share = happened / count;
  const square = NINETY_FIVE ** 2;
  const middle = (share + square / (2 * count)) / (1 + square / count);
  const half = NINETY_FIVE / (1 + square / count) *
    Math.sqrt(share * (1 - share) / count + square / (4 * count ** 2));
  return {
    value: share,
    low: happened === 0 ? 0 : middle - half,
    high: happened === count ? 1 : middle + half,
  };
}

/**
 * Chance that something that happens in one of `period` winters happens at least once in some.
 *
 * P = 1 − (1 − 1/T)ⁿ
 *
 * @param period T, number of winters, 1 or more
 * @param winters n, number of winters
 * @returns share, 0 to 1
 */
export function atLeastOnce(period: number, winters: number): number {
  requireInRange("return period", period, 1, 1e9, "winters");
  return 1 - (1 - 1 / period) ** winters;
}

/** A difference between two ways in the same winters. */
export interface PairedDifference {
  /** mean of the differences, in the same unit as the values */
  readonly mean: number;
  /** standard error of that mean, in the same unit */
  readonly error: number;
  /** difference that a tenth of the winters stays below; of fewer than 10 the least, in the same unit */
  readonly low: number;
  /** difference that nine tenths of them stay below; of fewer than 10 the greatest, in the same unit */
  readonly high: number;
}

/**
 * Difference between two ways, winter by winter: common winters take the scatter of the weather out.
 *
 * @param one values of the winters, at least 5
 * @param other values of the same winters in the same order
 */
export function pairedDifference(
  one: readonly number[],
  other: readonly number[],
): PairedDifference {
  requireInRange("number of winters", one.length, 5, 1e6, "winters");
  requireInRange("number of paired winters", other.length, one.length, one.length, "winters");
  const differences = one.map((value, winter) => value - other[winter]!);
  const sorted = differences.toSorted(ascending);
  const mean = differences.reduce((sum, value) => sum + value, 0) / differences.length;
  const square = differences.reduce((sum, value) => sum + (value - mean) ** 2, 0) /
    (differences.length - 1);
  return {
    mean,
    error: Math.sqrt(square / differences.length),
    low: atPlace(sorted, 0.1 * (sorted.length + 1)),
    high: atPlace(sorted, 0.9 * (sorted.length + 1)),
  };
}

/** The mean of a difference with its band of 95 %, 1.96 standard errors either way. */
export function meanWithBand({ mean, error }: PairedDifference): Banded {
  return { value: mean, low: mean - NINETY_FIVE * error, high: mean + NINETY_FIVE * error };
}

/**
 * Frequency factor of the Gumbel distribution: how many standard deviations above the mean the value
 * lies that one winter in `period` passes.
 *
 * K = −(√6/π)(γ + ln ln(T/(T − 1)))
 *
 * Source: Chow 1951 [chow-1951], from memory. Winter minima of house and air are bounded, so it overshoots theirs;
 * it is here to compare with published tables, and rare values come from {@link rareValue}.
 *
 * @param period T, number of winters, above 1
 * @returns ratio to the standard deviation
 */
export function gumbelFactor(period: number): number {
  requireInRange("return period", period, 1.0001, 1e9, "winters");
  const euler = 0.5772156649015329;
  return -Math.sqrt(6) / Math.PI * (euler + Math.log(Math.log(period / (period - 1))));
}

/**
 * Value that one winter in `period` passes under a generalised extreme value distribution.
 *
 * z = μ + (σ/ξ)((−ln(1 − 1/T))^−ξ − 1); μ − σ ln(−ln(1 − 1/T)) for ξ = 0
 *
 * Source: Coles 2001 [coles-2001], eq. 3.4, from memory.
 *
 * @param fit location and scale in one unit, shape as a plain number
 * @param period T, number of winters, above 1
 * @returns in the same unit as location and scale
 */
export function returnLevel(
  fit: { readonly location: number; readonly scale: number; readonly shape: number },
  period: number,
): number {
  requireInRange("return period", period, 1.0001, 1e9, "winters");
  const { location, scale, shape } = fit;
  const variate = -Math.log(-Math.log1p(-1 / period));
  return location + scale * (shape === 0 ? variate : Math.expm1(shape * variate) / shape);
}
