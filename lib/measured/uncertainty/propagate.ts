/** Uncertainty of results from the uncertainty of what they are worked out from. @module */
import { InputError } from "../../basics/mod.ts";
import { slopes } from "../fit/slopes.ts";

/** Estimates with their covariance. */
export interface Estimates {
  /** best values */
  readonly values: readonly number[];
  /** of the values with each other; the diagonal is the standard uncertainty squared */
  readonly covariance: readonly (readonly number[])[];
}

/** Estimates with their standard uncertainties and correlation. */
export interface Uncertain extends Estimates {
  /** standard uncertainty of each value, in its units */
  readonly uncertainties: readonly number[];
  /** -1 to 1; not a number where an uncertainty is 0 */
  readonly correlation: readonly (readonly number[])[];
}

/**
 * Means of readings taken together, with the covariance of the means (GUM [gum-2008], 4.2, 5.2.3).
 *
 * @param readings one list for each quantity, as many readings in each, at least 2
 * @throws InputError where the lists differ in length or are too short
 */
export function meansOfReadings(readings: readonly (readonly number[])[]): Uncertain {
  const count = readings[0]?.length ?? 0;
  if (count < 2 || readings.some((list) => list.length !== count)) {
    throw new InputError(
      `readings: lists of ${readings.map((list) => list.length).join(", ")}; expected at least 2 ` +
        "and as many of each quantity, taken at the same times",
    );
  }
  const values = readings.map((list) => list.reduce((sum, one) => sum + one, 0) / count);
  const covariance = readings.map((a, i) =>
    readings.map((b, j) =>
      a.reduce((sum, one, k) => sum + (one - values[i]!) * (b[k]! - values[j]!), 0) /
      (count * (count - 1))
    )
  );
  return withSpread({ values, covariance });
}

/**
 * Estimates from standard uncertainties and correlation.
 *
 * @param values best values
 * @param uncertainties standard, at least 0, in the units of the values
 * @param correlation -1 to 1, symmetric, 1 on the diagonal; left out: none
 * @throws InputError where lengths differ or a number is out of range
 */
export function estimates(
  values: readonly number[],
  uncertainties: readonly number[],
  correlation?: readonly (readonly number[])[],
): Uncertain {
  const r = (i: number, j: number) => correlation?.[i]?.[j] ?? (i === j ? 1 : 0);
  values.forEach((_, i) => {
    if (!(uncertainties[i]! >= 0)) {
      throw new InputError(
        `estimates: uncertainty ${i + 1} is ${uncertainties[i]}; expected 0 or more`,
      );
    }
    values.forEach((_, j) => {
      if (!(Math.abs(r(i, j)) <= 1) || r(i, j) !== r(j, i) || r(i, i) !== 1) {
        throw new InputError(
          `estimates: correlation of ${i + 1} with ${j + 1} is ${r(i, j)}; expected -1 to 1, the ` +
            "same both ways, 1 on the diagonal",
        );
      }
    });
  });
  const covariance = values.map((_, i) =>
    values.map((_, j) => r(i, j) * uncertainties[i]! * uncertainties[j]!)
  );
  return withSpread({ values, covariance });
}

/**
 * Results with their uncertainty and correlation by the law of propagation with correlated inputs
 * (GUM [gum-2008], 5.2.2 and annex H.2), straight about the best values.
 *
 * @param inputs with their covariance
 * @param results function of the values of the inputs
 */
export function propagate(
  inputs: Estimates,
  results: (values: readonly number[]) => readonly number[],
): Uncertain {
  const values = results(inputs.values);
  const columns = slopes(results, inputs.values);
  const covariance = values.map((_, a) =>
    values.map((_, b) => {
      let sum = 0;
      columns.forEach((one, i) =>
        columns.forEach((other, j) => sum += one[a]! * other[b]! * inputs.covariance[i]![j]!)
      );
      return sum;
    })
  );
  return withSpread({ values, covariance });
}

function withSpread({ values, covariance }: Estimates): Uncertain {
  // rounding can leave a variance a hair below 0 where inputs cancel
  const uncertainties = values.map((_, i) => Math.sqrt(Math.max(0, covariance[i]![i]!)));
  const correlation = values.map((_, i) =>
    values.map((_, j) =>
      i === j && uncertainties[i]! > 0
        ? 1
        : covariance[i]![j]! / (uncertainties[i]! * uncertainties[j]!)
    )
  );
  return { values, covariance, uncertainties, correlation };
}
