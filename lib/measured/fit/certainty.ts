/** How certain fitted parameters are. @module */
import { Matrix, SingularValueDecomposition } from "ml-matrix";
import jstat from "jstat";

/** How well the data tell the parameters. */
export interface Certainty {
  /** number of residuals less number of parameters */
  readonly degreesOfFreedom: number;
  /** of the residuals, in their units */
  readonly residualDeviation: number;
  /** of each parameter, in its units; infinite where the data cannot tell it */
  readonly standardDeviations: readonly number[];
  /** half the width of each parameter's 95 % interval, by Student's distribution */
  readonly halfWidths: readonly number[];
  /** of the parameters with each other, -1 to 1; not a number where one cannot be told */
  readonly correlation: readonly (readonly number[])[];
  /**
   * what the data cannot tell: combinations of parameters that leave every residual as it is, as
   * the share each parameter has in it (squares sum to 1); empty where all can be told
   */
  readonly untold: readonly (readonly number[])[];
}

/** ratio of singular values below which a combination leaves no trace in the residuals */
const NO_TRACE = 1e-12;

/**
 * Standard deviations, intervals and correlation of fitted parameters from the slopes of the
 * residuals at the best fit, taken as straight there.
 *
 * @param columns one list for each parameter: slope of each residual
 * @param parameters fitted
 * @param sumOfSquares of the residuals
 * @param count of the residuals, above the count of parameters
 */
export function certaintyOf(
  columns: readonly (readonly number[])[],
  parameters: readonly number[],
  sumOfSquares: number,
  count: number,
): Certainty {
  const size = parameters.length;
  const degreesOfFreedom = count - size;
  const residualDeviation = Math.sqrt(sumOfSquares / degreesOfFreedom);
  const lengths = columns.map((column) => Math.hypot(...column) || 1);
  const scaled = Matrix.zeros(count, size);
  columns.forEach((column, j) => column.forEach((one, i) => scaled.set(i, j, one / lengths[j]!)));
  const parts = new SingularValueDecomposition(scaled, { autoTranspose: true });
  const [strengths, turns] = [parts.diagonal, parts.rightSingularVectors];
  const told = strengths.map((one) => one > NO_TRACE * strengths[0]!);
  const shares = (k: number) => parameters.map((_, j) => turns.get(j, k));
  const untold = told.flatMap((one, k) => one ? [] : [shares(k)]);
  const blind = parameters.map((_, j) => untold.some((one) => Math.abs(one[j]!) > 1e-6));
  const covariance = (a: number, b: number) =>
    strengths.reduce(
      (sum, one, k) => told[k] ? sum + turns.get(a, k) * turns.get(b, k) / (one * one) : sum,
      0,
    );
  const spreads = parameters.map((_, j) => Math.sqrt(covariance(j, j)));
  const standardDeviations = spreads.map((one, j) =>
    blind[j] ? Infinity : residualDeviation * one / lengths[j]!
  );
  const student = jstat.studentt.inv(0.975, degreesOfFreedom);
  return {
    degreesOfFreedom,
    residualDeviation,
    standardDeviations,
    halfWidths: standardDeviations.map((one) => student * one),
    correlation: parameters.map((_, a) =>
      parameters.map((_, b) =>
        blind[a] || blind[b] ? NaN : a === b ? 1 : covariance(a, b) / (spreads[a]! * spreads[b]!)
      )
    ),
    untold,
  };
}
