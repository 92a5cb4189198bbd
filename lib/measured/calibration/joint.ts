/** All stages together once more: several parameters of one model at the same time. @module */
import { Matrix, SingularValueDecomposition } from "ml-matrix";
import { InputError } from "../../basics/mod.ts";
import { fitLeastSquares } from "../fit/least_squares.ts";
import { slopes } from "../fit/slopes.ts";
import {
  certaintyWithTies,
  type Estimate,
  serialOf,
  type Stage,
  TOLD_TOGETHER,
} from "./estimate.ts";
import type { Prior } from "./fitted_study.ts";
import { showFigures, showNumber } from "../../units/mod.ts";

/** A parameter of the model that is fitted; above 0. */
export interface JointParameter {
  /** what it is, for the reader */
  readonly name: string;
  /** key of the study that takes it; null where none does */
  readonly key: string | null;
  /** unit of start, prior and result; "" for a plain number or a ratio */
  readonly unit: string;
  /** value of its own stage, or that of the study, in the same unit */
  readonly start: number;
  /** what would be believed without the log, in that unit */
  readonly prior: Prior;
}

/** A parameter that stays at its start, and why. */
export interface Unidentified {
  /** which */
  readonly parameter: JointParameter;
  /** a plain sentence */
  readonly reason: string;
}

/** Result of a joint fit. */
export interface JointStage extends Stage {
  /** parameters that these data do not identify beside the others; they stay at their start */
  readonly notIdentified: readonly Unidentified[];
  /**
   * ratios of the singular values of all parameters' slopes, each column of length one, to the
   * greatest: how well the combinations are told; near 0, one that is not
   */
  readonly strengths: readonly number[];
  /** root of the mean square of the residuals at the best fit, in the same unit */
  readonly error: number;
  /** false where the fit ran out of rounds */
  readonly settled: boolean;
}

/**
 * Fits parameters of a model together, in their logarithms, by Levenberg and Marquardt
 * ({@link fitLeastSquares}). A parameter that is told only together with another (correlation above 0.95)
 * or whose interval is wider than what was believed before is not identified: the worst such one is set
 * back to its start, and the others are fitted again.
 *
 * @param parameters with start and prior
 * @param residuals computed less measured at values of all parameters, in order of time, K or any one
 * unit; weighted where they are of several kinds
 * @param runs number of the unbroken run of time of each residual; one run unless given
 * @param options `known`: the residuals are already in units of their own standard uncertainty, shared errors
 * counted, so that a scatter below 1 does not make the intervals narrower; ties are counted here
 * @throws InputError where a start is not above 0
 */
export function jointFit(
  parameters: readonly JointParameter[],
  residuals: (values: readonly number[]) => readonly number[],
  runs?: readonly number[],
  options: { readonly known?: boolean } = {},
): JointStage {
  const odd = parameters.find(({ start }) => !(start > 0));
  if (odd !== undefined) {
    throw new InputError(
      `joint fit: ${odd.name} starts at ${odd.start}; expected above 0: leave out what is 0 in the study`,
    );
  }
  // logarithms over the start, about a number that gives the slopes steps of a hundredth
  const middle = (count: number) => new Array<number>(count).fill(MIDDLE);
  const valuesOf = (kept: readonly number[], places: readonly number[]) =>
    parameters.map(({ start }, j) => {
      const place = kept.indexOf(j);
      return place < 0 ? start : start * Math.exp(places[place]! - MIDDLE);
    });
  const every = parameters.map((_, j) => j);
  const strengths = strengthsOf(
    slopes((places) => residuals(valuesOf(every, places)), middle(parameters.length)),
  );
  let kept = every;
  const notIdentified: Unidentified[] = [];
  for (;;) {
    const fit = fitLeastSquares((places) => residuals(valuesOf(kept, places)), middle(kept.length));
    const values = valuesOf(kept, fit.parameters);
    const left = residuals(values);
    const serial = serialOf(left, runs);
    const tied = certaintyWithTies(fit, left.length, kept.length, serial);
    const least = options.known === true ? Math.max(1, 1 / fit.residualDeviation) : 1;
    const sure = {
      standardDeviations: tied.standardDeviations.map((one) => one * least),
      halfWidths: tied.halfWidths.map((one) => one * least),
    };
    const estimates = kept.map((j, k): Estimate => {
      const { name, key, unit } = parameters[j]!;
      const value = values[j]!;
      const [spread, half] = [sure.standardDeviations[k]!, sure.halfWidths[k]!];
      return {
        name,
        key,
        unit,
        value,
        standardUncertainty: value * spread,
        low: value * Math.exp(-half),
        high: value * Math.exp(half),
      };
    });
    const worst = worstOf(kept.map((j) => parameters[j]!), estimates, fit.correlation);
    if (worst === null || kept.length === 1) {
      const last = worst === null
        ? []
        : [{ parameter: parameters[kept[0]!]!, reason: worst.reason }];
      const all = [...notIdentified, ...last];
      const told = worst === null ? estimates : [];
      return {
        name: "joint fit",
        estimates: told,
        correlation: worst === null ? fit.correlation : [],
        used: `${left.length} residuals that tell as much as ${
          showNumber(serial.effectiveCount, 0)
        } independent ones`,
        count: left.length,
        places: [],
        notIdentified: all,
        strengths,
        error: Math.sqrt(fit.sumOfSquares / left.length),
        settled: fit.settled,
        cannotTell: [
          ...all.map(({ parameter, reason }) => `${parameter.name}: ${reason}`),
          "A wrong form of the model is in none of these intervals: look at the weeks held out.",
        ],
      };
    }
    notIdentified.push({ parameter: parameters[kept[worst.place]!]!, reason: worst.reason });
    kept = kept.filter((_, k) => k !== worst.place);
  }
}

const MIDDLE = 10;

function strengthsOf(columns: readonly (readonly number[])[]): number[] {
  const scaled = columns.map((column) => {
    const length = Math.hypot(...column) || 1;
    return column.map((one) => one / length);
  });
  const { diagonal } = new SingularValueDecomposition(new Matrix(scaled), { autoTranspose: true });
  return diagonal.map((one) => one / diagonal[0]!);
}

/** The parameter that is told worst, if so badly that it must go: place in the list and reason. */
function worstOf(
  kept: readonly JointParameter[],
  estimates: readonly Estimate[],
  correlation: readonly (readonly number[])[],
): { readonly place: number; readonly reason: string } | null {
  let [place, most, reason] = [-1, 1, ""];
  estimates.forEach(({ low, high }, k) => {
    const { prior, unit } = kept[k]!;
    const believed = Math.log(prior.high / prior.low);
    const wide = Math.log(high / low) / believed;
    const bad = Number.isFinite(wide) ? wide : Infinity;
    if (!(bad > most)) return;
    [place, most] = [k, bad];
    reason = Number.isFinite(bad)
      ? `not identified: ${showFigures(low, 2)} to ${
        showFigures(high, 2)
      } ${unit} is wider than what was ` +
        "believed before; it stays at its start."
      : "not identified: it leaves no trace in these data; it stays at its start.";
  });
  if (place >= 0) return { place, reason };
  let tie = TOLD_TOGETHER;
  kept.forEach((_, a) =>
    kept.slice(0, a).forEach((_, b) => {
      const r = Math.abs(correlation[a]![b]!);
      if (!(r > tie)) return;
      tie = r;
      const width = (k: number) =>
        Math.log(estimates[k]!.high / estimates[k]!.low) /
        Math.log(kept[k]!.prior.high / kept[k]!.prior.low);
      place = width(a) > width(b) ? a : b;
      const other = place === a ? b : a;
      reason = `not identified: told only together with ${kept[other]!.name} (correlation ${
        showNumber(correlation[a]![b]!, 2)
      }); it stays at its start.`;
    })
  );
  return place >= 0 ? { place, reason } : null;
}
