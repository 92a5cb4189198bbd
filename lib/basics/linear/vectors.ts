/** Small linear algebra on plain arrays. @module */
import { EigenvalueDecomposition, type Matrix } from "ml-matrix";

/** Scalar product; four sums at a time. */
export function dot(a: Float64Array, b: Float64Array): number {
  let s0 = 0, s1 = 0, s2 = 0, s3 = 0;
  const whole = a.length & ~3;
  for (let k = 0; k < whole; k += 4) {
    s0 += a[k]! * b[k]!;
    s1 += a[k + 1]! * b[k + 1]!;
    s2 += a[k + 2]! * b[k + 2]!;
    s3 += a[k + 3]! * b[k + 3]!;
  }
  for (let k = whole; k < a.length; k++) s0 += a[k]! * b[k]!;
  return s0 + s1 + s2 + s3;
}

/** target − factor·vector, in place. */
export function subtract(target: Float64Array, factor: number, vector: Float64Array): void {
  for (let k = 0; k < target.length; k++) target[k]! -= factor * vector[k]!;
}

/** Eigenvalues and vectors of a symmetric matrix, rising. */
export function eigen(matrix: Matrix): { values: number[]; vectors: Matrix } {
  const result = new EigenvalueDecomposition(matrix, { assumeSymmetric: true });
  return { values: result.realEigenvalues, vectors: result.eigenvectorMatrix };
}
