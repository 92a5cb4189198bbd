/** A straight-line fit in several columns, with residuals that may hang together in time. @module */
import { Matrix, QrDecomposition } from "ml-matrix";
import { InputError } from "../../basics/mod.ts";
import { type Certainty, certaintyOf } from "../fit/certainty.ts";
import { certaintyWithTies, type Serial, serialOf } from "./estimate.ts";

/** A fitted straight line in several columns. */
export interface LinearFit extends Certainty {
  /** one for each column, in units of the values over those of the column */
  readonly parameters: readonly number[];
  /** fitted less measured, in order, in units of the values */
  readonly residuals: readonly number[];
  /** how far the residuals hang together */
  readonly serial: Serial;
}

/**
 * Least squares of values = Σ parameter · column. Standard deviations allow for residuals that hang
 * together in time.
 *
 * @param columns one list for each parameter
 * @param values measured, as many as in each column
 * @param runs number of the unbroken run of time of each value; one run unless given
 * @param weights of the values, 1 over the square of each standard uncertainty, or relative; equal
 * unless given
 * @throws InputError where the values are no more than the parameters
 */
export function fitLinear(
  columns: readonly (readonly number[])[],
  values: readonly number[],
  runs?: readonly number[],
  weights?: readonly number[],
): LinearFit {
  const count = values.length;
  if (count <= columns.length) {
    throw new InputError(
      `calibration: ${count} values for ${columns.length} unknowns; expected more values than ` +
        "unknowns: log longer, or ask for fewer",
    );
  }
  const root = (i: number) => weights === undefined ? 1 : Math.sqrt(weights[i]!);
  const weighted = columns.map((column) => column.map((one, i) => one * root(i)));
  const lengths = weighted.map((column) => Math.hypot(...column) || 1);
  const left = new Matrix(
    values.map((_, i) => weighted.map((column, j) => column[i]! / lengths[j]!)),
  );
  const right = Matrix.columnVector(values.map((one, i) => one * root(i)));
  const factors = new QrDecomposition(left);
  const solved = factors.isFullRank()
    ? factors.solve(right).to1DArray().map((one, j) => one / lengths[j]!)
    : columns.map(() => NaN);
  const residuals = values.map((one, i) =>
    columns.reduce((sum, column, j) => sum + column[i]! * solved[j]!, -one)
  );
  const sum = residuals.reduce((total, one, i) => total + (one * root(i)) ** 2, 0);
  const plain = certaintyOf(weighted, solved, sum, count);
  const serial = serialOf(residuals.map((one, i) => one * root(i)), runs);
  return {
    ...plain,
    ...certaintyWithTies(plain, count, columns.length, serial),
    parameters: solved,
    residuals,
    serial,
  };
}
