/**
 * What a sample of a model says: the band its values fill, and which input moves them most, from a
 * polynomial through the sample.
 *
 * @module
 */
import { ascending, mean, quantileSorted } from "d3-array";
import { Matrix, QrDecomposition } from "ml-matrix";
import { requireInRange } from "../../basics/mod.ts";
import type { SensitivityIndex } from "./indices.ts";
import type { Band } from "./types.ts";

/** What a sample says of one figure. */
export interface SampledEffects {
  /** 95 % of the values, in the unit of the figure */
  readonly band: Band;
  /** by input; null where the polynomial does not tell */
  readonly effects: readonly SensitivityIndex[] | null;
  /**
   * share of the variance that the polynomial foretells at points it was not fitted to, left out one
   * by one; below 0 where it is worse than the mean
   */
  readonly foretold: number;
}

/** Least share of the variance that must be foretold for the effects to be stated. */
export const LEAST_FORETOLD = 0.8;
/** Points that each term of the polynomial needs at least. */
const POINTS_PER_TERM = 1.5;

/** A product of Legendre polynomials: the degree in each input that it has. */
type Term = ReadonlyMap<number, 1 | 2>;

/** Normed Legendre polynomials on 0 to 1: their squares have the mean 1. */
function legendre(degree: 1 | 2, share: number): number {
  const x = 2 * share - 1;
  return degree === 1 ? Math.sqrt(3) * x : Math.sqrt(5) * (1.5 * x * x - 0.5);
}

/** Straight lines; with squares; with products of two inputs besides. */
function bases(inputs: number): readonly (readonly Term[])[] {
  const all = Array.from({ length: inputs }, (_, input) => input);
  const lines = all.map((input): Term => new Map([[input, 1]]));
  const squares = all.map((input): Term => new Map([[input, 2]]));
  const products = all.flatMap((one) =>
    all.slice(one + 1).map((other): Term => new Map([[one, 1], [other, 1]]))
  );
  return [lines, [...lines, ...squares], [...lines, ...squares, ...products]];
}

interface Fit {
  readonly terms: readonly Term[];
  readonly coefficients: readonly number[];
  readonly foretold: number;
}

function fitted(
  terms: readonly Term[],
  points: readonly (readonly number[])[],
  values: readonly number[],
): Fit {
  const rows = points.map((row) => [
    1,
    ...terms.map((term) =>
      [...term].reduce((product, [input, degree]) => product * legendre(degree, row[input]!), 1)
    ),
  ]);
  const decomposition = new QrDecomposition(new Matrix(rows));
  const target = Matrix.columnVector([...values]);
  const coefficients = decomposition.solve(target).to1DArray();
  const reach = decomposition.orthogonalMatrix.to2DArray();
  const middle = mean(values)!;
  let [left, all] = [0, 0];
  rows.forEach((row, place) => {
    const found = row.reduce((sum, one, column) => sum + one * coefficients[column]!, 0);
    const own = reach[place]!.reduce((sum, one) => sum + one * one, 0);
    left += ((values[place]! - found) / Math.max(1e-12, 1 - own)) ** 2;
    all += (values[place]! - middle) ** 2;
  });
  return { terms, coefficients: coefficients.slice(1), foretold: 1 - left / all };
}

/**
 * Band of the values, and first-order and total share of each input in their variance, from the
 * coefficients of the polynomial of degree 1 or 2 that foretells points left out best.
 *
 * S of an input is the sum of the squares of the coefficients of the terms that have it alone over the
 * sum of all, S_T that of all terms that have it.
 *
 * Source: Sudret 2008 [sudret-2008] for the shares, from memory.
 *
 * @param points rows of shares, 0 to 1, one for each input, evenly spread
 * @param values of the figure at these points, in any one unit
 * @throws {RangeError} for fewer than 4 points
 */
export function sampledEffects(
  points: readonly (readonly number[])[],
  values: readonly number[],
): SampledEffects {
  requireInRange("number of points", values.length, 4, 1e7, "points");
  const sorted = values.toSorted(ascending);
  const band: Band = [quantileSorted(sorted, 0.025)!, quantileSorted(sorted, 0.975)!];
  const inputs = points[0]!.length;
  if (sorted[0] === sorted.at(-1)) {
    return { band, effects: points[0]!.map(() => ({ first: 0, total: 0 })), foretold: 1 };
  }
  const fits = bases(inputs)
    .filter((terms) => POINTS_PER_TERM * (terms.length + 1) <= values.length)
    .map((terms) => fitted(terms, points, values));
  const best = fits.reduce<Fit | null>(
    (one, other) => one === null || other.foretold > one.foretold ? other : one,
    null,
  );
  if (best === null) return { band, effects: null, foretold: 0 };
  const { terms, coefficients, foretold } = best;
  if (!(foretold >= LEAST_FORETOLD)) return { band, effects: null, foretold };
  const squares = coefficients.map((one) => one * one);
  const sum = (which: (term: Term) => boolean) =>
    squares.reduce((total, one, place) => total + (which(terms[place]!) ? one : 0), 0);
  const variance = sum(() => true);
  return {
    band,
    effects: points[0]!.map((_, input) => ({
      first: sum((term) => term.size === 1 && term.has(input)) / variance,
      total: sum((term) => term.has(input)) / variance,
    })),
    foretold,
  };
}
