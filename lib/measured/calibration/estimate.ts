/** What a stage of the calibration finds, and how surely. @module */
import jstat from "jstat";
import type { Certainty } from "../fit/certainty.ts";
import { showNumber } from "../../units/mod.ts";

/** One fitted value. */
export interface Estimate {
  /** what it is, for the reader */
  readonly name: string;
  /** key of the study file that takes it, such as "house.leakage"; null where none does */
  readonly key: string | null;
  /** best value, in the unit of `unit` */
  readonly value: number;
  /** unit of value, uncertainty and interval as the study file writes it; "" for a plain number */
  readonly unit: string;
  /** standard uncertainty, in the same unit; infinite where the data cannot tell the value */
  readonly standardUncertainty: number;
  /** lower end of the 95 % interval, in the same unit */
  readonly low: number;
  /** upper end of the 95 % interval, in the same unit */
  readonly high: number;
}

/** What a stage found. */
export interface Stage {
  /** name of the stage, for the reader */
  readonly name: string;
  /** what was fitted */
  readonly estimates: readonly Estimate[];
  /** of the estimates with each other, −1 to 1; not a number where one cannot be told */
  readonly correlation: readonly (readonly number[])[];
  /** which nights, hours or depths entered, in words */
  readonly used: string;
  /** number of values that entered */
  readonly count: number;
  /** places in the log of the values that entered, index from 0; empty where it was no log */
  readonly places: readonly number[];
  /** what these data cannot tell, a plain sentence each */
  readonly cannotTell: readonly string[];
}

/** Correlation from which on two values count as told only together, of either sign. */
export const TOLD_TOGETHER = 0.95;

/** A value with its interval from standard uncertainty and half width, all in one unit. */
export function estimateOf(
  what: Pick<Estimate, "name" | "key" | "unit">,
  value: number,
  standardUncertainty: number,
  halfWidth: number,
): Estimate {
  const { name, key, unit } = what;
  return {
    name,
    key,
    value,
    unit,
    standardUncertainty,
    low: value - halfWidth,
    high: value + halfWidth,
  };
}

/**
 * The estimate with a share of doubt that all readings have in common, such as a meter that is off:
 * the squares of both standard uncertainties add up (GUM [gum-2008] 5.1.2). Scatter does not show it,
 * and more readings do not lower it.
 *
 * @param estimate from the scatter of the readings
 * @param share standard uncertainty of the common factor over the value, 0 to 1
 */
export function withCommonDoubt(estimate: Estimate, share: number): Estimate {
  return widened(estimate, Math.abs(estimate.value) * share);
}

/**
 * The estimate with a doubt that all readings have in common, in its own unit; see {@link withCommonDoubt}.
 *
 * @param estimate from the scatter of the readings
 * @param common standard uncertainty, in the estimate's unit
 */
export function widened(estimate: Estimate, common: number): Estimate {
  const { value, standardUncertainty, low, high } = estimate;
  const wide = (half: number) => Math.hypot(half, NORMAL_95 * common);
  return {
    ...estimate,
    standardUncertainty: Math.hypot(standardUncertainty, common),
    low: value - wide(value - low),
    high: value + wide(high - value),
  };
}

/** standard deviations to either side that hold 95 % of a normal distribution */
const NORMAL_95 = 1.959963985;

/** How far residuals hang together: what they tell, as if they did not. */
export interface Serial {
  /** number of residuals that tell only as much as one of their own */
  readonly tied: number;
  /** number of residuals without ties that would tell as much */
  readonly effectiveCount: number;
}

/** fewest pairs of residuals a lag needs to be looked at */
const FEWEST_PAIRS = 8;

/**
 * Ties of residuals in time: n_eff = n/(1 + 2·Σ ρ_k), the correlations added up in pairs of lags until a
 * pair shows no more than chance would (initial positive sequence, Geyer 1992 [geyer-1992], from memory).
 * Exact for a mean, on the safe side for regressors that change faster.
 *
 * @param residuals in order of time, any one unit
 * @param runs number of the unbroken run of each residual; one run unless given
 */
export function serialOf(residuals: readonly number[], runs?: readonly number[]): Serial {
  const count = residuals.length;
  const variance = residuals.reduce((sum, one) => sum + one * one, 0) / count;
  const none = { tied: 1, effectiveCount: count };
  if (!(variance > 0)) return none;
  const correlation = (lag: number): { readonly value: number; readonly chance: number } | null => {
    let [sum, pairs] = [0, 0];
    for (let i = lag; i < count; i++) {
      if (runs !== undefined && runs[i] !== runs[i - lag]) continue;
      sum += residuals[i]! * residuals[i - lag]!;
      pairs++;
    }
    if (pairs < FEWEST_PAIRS) return null;
    const raw = sum / pairs / variance;
    // a fitted mean draws the correlations of a short record down
    return { value: raw + (1 + 3 * Math.max(0, raw)) / count, chance: 1 / pairs };
  };
  let sum = 0;
  for (let lag = 1; lag < count / 2; lag += 2) {
    const [one, other] = [correlation(lag), correlation(lag + 1)];
    const both = (one?.value ?? 0) + (other?.value ?? 0);
    const chance = Math.sqrt((one?.chance ?? 0) + (other?.chance ?? 0));
    if (one === null || both < 2 * chance) break;
    sum += both;
  }
  const tied = Math.min(count / 2, 1 + 2 * sum);
  return { tied, effectiveCount: count / tied };
}

/** Standard deviations and half widths of a fit whose residuals hang together in time. */
export function certaintyWithTies(
  certainty: Certainty,
  count: number,
  parameters: number,
  serial: Serial,
): Pick<Certainty, "standardDeviations" | "halfWidths"> {
  const wider = Math.sqrt(count / serial.effectiveCount);
  const freedom = Math.max(1, serial.effectiveCount - parameters);
  const student = jstat.studentt.inv(0.975, freedom);
  const standardDeviations = certainty.standardDeviations.map((one) => one * wider);
  return { standardDeviations, halfWidths: standardDeviations.map((one) => one * student) };
}

/** An estimate of something above 0 whose interval is even in the logarithm: times and over a factor. */
export function ratioEstimate(
  what: Pick<Estimate, "name" | "key" | "unit">,
  value: number,
  standardUncertainty: number,
): Estimate {
  const factor = Math.exp(NORMAL_95 * standardUncertainty / value);
  return { ...what, value, standardUncertainty, low: value / factor, high: value * factor };
}

/** Sentences for pairs of estimates that these data tell only together. */
export function toldTogether(
  names: readonly string[],
  correlation: readonly (readonly number[])[],
): string[] {
  return names.flatMap((one, a) =>
    names.slice(a + 1).flatMap((other, k) => {
      const r = correlation[a]![a + 1 + k]!;
      return Math.abs(r) > TOLD_TOGETHER
        ? [
          `${one} and ${other} are told only together (correlation ${
            showNumber(r, 2)
          }): a higher ` +
          `${one} with a ${r > 0 ? "higher" : "lower"} ${other} fits as well.`,
        ]
        : [];
    })
  );
}
