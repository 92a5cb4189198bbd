/** From vectors that are not orthogonal to orthonormal ones, by their products alone. @module */
import { Matrix } from "ml-matrix";

/** R with Rᵀ·R = the products of the chosen vectors, row by row, and which were chosen. */
interface PivotedCholesky {
  readonly rows: readonly Float64Array[];
  readonly order: readonly number[];
}

/**
 * Cholesky of the products of unit vectors with pivoting: the first vector first, then always the one
 * with most left over; stops where less than `least` of its square is.
 */
function pivotedCholesky(products: Matrix, least: number): PivotedCholesky {
  const count = products.rows;
  const left = Float64Array.from({ length: count }, (_, k) => products.get(k, k));
  const rows: Float64Array[] = [];
  const order: number[] = [];
  const chosen = new Uint8Array(count);
  while (order.length < count) {
    let pivot = order.length === 0 ? 0 : -1;
    for (let k = 0; order.length > 0 && k < count; k++) {
      if (chosen[k] === 0 && (pivot < 0 || left[k]! > left[pivot]!)) pivot = k;
    }
    if (left[pivot]! < least) break;
    chosen[pivot] = 1;
    order.push(pivot);
    const root = Math.sqrt(left[pivot]!);
    const row = new Float64Array(count);
    for (let j = 0; j < count; j++) row[j] = products.get(pivot, j);
    for (const earlier of rows) {
      const factor = earlier[pivot]!;
      for (let j = 0; j < count; j++) row[j]! -= factor * earlier[j]!;
    }
    for (let j = 0; j < count; j++) {
      row[j] = chosen[j] === 1 ? 0 : row[j]! / root;
      left[j]! -= row[j]! ** 2;
    }
    row[pivot] = root;
    rows.push(row);
  }
  return { rows, order };
}

/**
 * Weights that make orthonormal vectors of given ones, one column each: the first given vector is the
 * first made. Vectors that add nothing to the others are left out.
 *
 * @param products of the vectors with each other; their lengths are 1 or nearly so
 * @param least square of what a vector must add, as part of its own
 */
export function orthonormalWeights(products: Matrix, least: number): Matrix {
  const { rows, order } = pivotedCholesky(products, least);
  const rank = order.length;
  const weights = Matrix.zeros(products.rows, rank);
  // columns of R⁻¹ by going up its rows
  for (let j = 0; j < rank; j++) {
    const column = new Float64Array(rank);
    column[j] = 1 / rows[j]![order[j]!]!;
    for (let i = j - 1; i >= 0; i--) {
      let sum = 0;
      for (let k = i + 1; k <= j; k++) sum += rows[i]![order[k]!]! * column[k]!;
      column[i] = -sum / rows[i]![order[i]!]!;
    }
    for (let i = 0; i <= j; i++) weights.set(order[i]!, j, column[i]!);
  }
  return weights;
}
