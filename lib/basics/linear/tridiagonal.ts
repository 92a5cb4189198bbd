/**
 * Linear equations with three diagonals.
 *
 * @module
 */

/** Coefficients of the equations lower·x[i−1] + middle·x[i] + upper·x[i+1] = right. */
export interface Tridiagonal {
  readonly lower: Float64Array;
  readonly middle: Float64Array;
  readonly upper: Float64Array;
  readonly right: Float64Array;
}

/**
 * Solves equations with three diagonals by elimination without pivoting (Thomas).
 *
 * @param equations coefficients; left as they are
 * @returns the unknowns
 */
export function solveTridiagonal(equations: Tridiagonal): Float64Array {
  const { lower, middle, upper, right } = equations;
  const n = middle.length;
  const factor = new Float64Array(n);
  const x = new Float64Array(n);
  let pivot = 1;
  for (let i = 0; i < n; i++) {
    const before = i > 0 ? lower[i]! : 0;
    pivot = middle[i]! - before * (i > 0 ? factor[i - 1]! : 0);
    factor[i] = upper[i]! / pivot;
    x[i] = (right[i]! - before * (i > 0 ? x[i - 1]! : 0)) / pivot;
  }
  for (let i = n - 2; i >= 0; i--) x[i] = x[i]! - factor[i]! * x[i + 1]!;
  return x;
}
