/** Whether what the store is said to save is real, or the luck of the weather. @module */
import jstat from "jstat";
import { serialOf } from "../calibration/estimate.ts";
import { fitLeastSquares } from "../fit/least_squares.ts";
import type { Banded } from "./sums.ts";

/** A difference that was tested. */
export interface TestedDifference extends Banded {
  /** number of nights or days compared */
  readonly count: number;
  /** number of nights or days without ties in time that would tell as much */
  readonly effectiveCount: number;
  /** chance of a difference as large by luck alone where there is none, 0 to 1 */
  readonly chance: number;
  /** true where the 95 % range leaves out 0 */
  readonly real: boolean;
}

/** fewest pairs that are tested */
const FEWEST = 7;

/** Range and chance of a difference by Student's t with the nights that tell something of their own. */
function tested(value: number, deviation: number, freedom: number) {
  const half = deviation * jstat.studentt.inv(0.975, freedom);
  const chance = deviation > 0
    ? 2 * (1 - jstat.studentt.cdf(Math.abs(value) / deviation, freedom))
    : value === 0
    ? 1
    : 0;
  return {
    value,
    low: value - half,
    high: value + half,
    chance,
    real: value !== 0 && Math.abs(value) > half,
  };
}

/**
 * Mean of paired differences with Student's t, where neighbours in time hang together: the variance of
 * the mean is that of as many differences without ties as would tell as much (see {@link serialOf}).
 *
 * @param differences in order of time, any one unit; NaN where there is no pair
 * @returns null with fewer than seven pairs
 */
export function pairedDifference(differences: readonly number[]): TestedDifference | null {
  const there = differences.filter(Number.isFinite);
  if (there.length < FEWEST) return null;
  const count = there.length;
  const mean = there.reduce((sum, one) => sum + one, 0) / count;
  const residuals = there.map((one) => one - mean);
  const variance = residuals.reduce((sum, one) => sum + one * one, 0) / (count - 1);
  const { tied, effectiveCount } = serialOf(residuals);
  const freedom = Math.max(1, effectiveCount - 1);
  return {
    ...tested(mean, Math.sqrt(variance * tied / count), freedom),
    count,
    effectiveCount,
  };
}

/** One night or day of a house whose fan was switched off for a while. */
export interface ComparedNight {
  /** K that the house was warmer than outdoors, or kWh of heater */
  readonly value: number;
  /** what drives it besides the store, such as degC outdoors and kWh/m² of sun the day before */
  readonly drivers: readonly number[];
  /** the fan could run */
  readonly fan: boolean;
}

/**
 * What the fan adds, other things being equal: least squares of the value on its drivers and on
 * whether the fan could run, with ties in time as above.
 *
 * @param nights in order of time
 * @returns null with fewer than seven nights of either kind
 */
export function fanDifference(nights: readonly ComparedNight[]): TestedDifference | null {
  const there = nights.filter(({ value, drivers }) => [value, ...drivers].every(Number.isFinite));
  const withFan = there.filter(({ fan }) => fan).length;
  if (withFan < FEWEST || there.length - withFan < FEWEST) return null;
  const width = there[0]!.drivers.length + 2;
  const rows = there.map(({ drivers, fan }) => [fan ? 1 : 0, 1, ...drivers]);
  const residualsAt = (parameters: readonly number[]) =>
    there.map(({ value }, i) =>
      value - rows[i]!.reduce((sum, one, k) => sum + one * parameters[k]!, 0)
    );
  const fit = fitLeastSquares(residualsAt, new Array<number>(width).fill(0));
  const residuals = residualsAt(fit.parameters);
  const { tied, effectiveCount } = serialOf(residuals);
  const deviation = fit.standardDeviations[0]! * Math.sqrt(tied);
  return {
    ...tested(fit.parameters[0]!, deviation, Math.max(1, effectiveCount - width)),
    count: there.length,
    effectiveCount,
  };
}
