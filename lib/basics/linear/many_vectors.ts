/**
 * Products and sums of many long vectors at once. Stretches of all vectors that fit the second-level
 * cache are worked on together, four vectors by two in registers, so that each value is loaded a few
 * times in place of once for every product.
 *
 * @module
 */
import { Matrix } from "ml-matrix";

/** Values of each vector worked on together: 250 vectors of them are 2 MB. */
const STRETCH = 1024;

/** sums[0…7] += products of four vectors with two over a stretch. */
function addProducts(
  four: readonly Float64Array[],
  two: readonly Float64Array[],
  from: number,
  to: number,
  sums: Float64Array,
): void {
  const [a, b, c, d] = four as [Float64Array, Float64Array, Float64Array, Float64Array];
  const [p, q] = two as [Float64Array, Float64Array];
  let s0 = 0, s1 = 0, s2 = 0, s3 = 0, t0 = 0, t1 = 0, t2 = 0, t3 = 0;
  for (let k = from; k < to; k++) {
    const x = p[k]!;
    const y = q[k]!;
    const e = a[k]!;
    const f = b[k]!;
    const g = c[k]!;
    const h = d[k]!;
    s0 += e * x;
    s1 += f * x;
    s2 += g * x;
    s3 += h * x;
    t0 += e * y;
    t1 += f * y;
    t2 += g * y;
    t3 += h * y;
  }
  sums[0]! += s0;
  sums[1]! += s1;
  sums[2]! += s2;
  sums[3]! += s3;
  sums[4]! += t0;
  sums[5]! += t1;
  sums[6]! += t2;
  sums[7]! += t3;
}

/** The list filled up with a vector of zeros to a whole number of groups. */
function filledUp(vectors: readonly Float64Array[], group: number): Float64Array[] {
  const zeros = new Float64Array(vectors[0]!.length);
  const missing = (group - vectors.length % group) % group;
  return [...vectors, ...new Array<Float64Array>(missing).fill(zeros)];
}

/**
 * Products of the vectors of one list with those of another, a by b, where the result is known to be
 * symmetric: only half of it is worked out. 2·n·a·b/2 flops.
 *
 * @param vectors of one length
 * @param others as many, of the same length; the vectors themselves unless given
 */
export function symmetricProducts(
  vectors: readonly Float64Array[],
  others: readonly Float64Array[] = vectors,
): Matrix {
  const [rows, columns] = [filledUp(vectors, 4), filledUp(others, 2)];
  const groups: { row: number; column: number; sums: Float64Array }[] = [];
  for (let row = 0; row < rows.length; row += 4) {
    for (let column = 0; column < Math.min(row + 4, columns.length); column += 2) {
      groups.push({ row, column, sums: new Float64Array(8) });
    }
  }
  const length = vectors[0]!.length;
  for (let from = 0; from < length; from += STRETCH) {
    const to = Math.min(length, from + STRETCH);
    for (const { row, column, sums } of groups) {
      addProducts(rows.slice(row, row + 4), columns.slice(column, column + 2), from, to, sums);
    }
  }
  const result = Matrix.zeros(vectors.length, vectors.length);
  for (const { row, column, sums } of groups) {
    for (let k = 0; k < 8; k++) {
      const [i, j] = [row + k % 4, column + (k >> 2)];
      if (i >= vectors.length || j > i) continue;
      result.set(i, j, sums[k]!);
      result.set(j, i, sums[k]!);
    }
  }
  return result;
}

/** Two sums += four vectors with weights over a stretch; weights of the first sum come first. */
function addWeighted(
  four: readonly Float64Array[],
  weights: Float64Array,
  sums: readonly Float64Array[],
  from: number,
  to: number,
): void {
  const [a, b, c, d] = four as [Float64Array, Float64Array, Float64Array, Float64Array];
  const [s, t] = sums as [Float64Array, Float64Array];
  const [w0, w1, w2, w3] = [weights[0]!, weights[1]!, weights[2]!, weights[3]!];
  const [v0, v1, v2, v3] = [weights[4]!, weights[5]!, weights[6]!, weights[7]!];
  for (let k = from; k < to; k++) {
    const e = a[k]!;
    const f = b[k]!;
    const g = c[k]!;
    const h = d[k]!;
    s[k]! += w0 * e + w1 * f + w2 * g + w3 * h;
    t[k]! += v0 * e + v1 * f + v2 * g + v3 * h;
  }
}

/**
 * Weighted sums of vectors: result[j] = Σᵢ weights[i, j]·vectors[i]. 2·n flops a weight.
 *
 * @param vectors of one length
 * @param weights one row a vector, one column a sum
 */
export function weightedSums(
  vectors: readonly Float64Array[],
  weights: Matrix,
): Float64Array[] {
  const length = vectors[0]!.length;
  const filled = filledUp(vectors, 4);
  const sums = Array.from({ length: weights.columns }, () => new Float64Array(length));
  const spare = new Float64Array(weights.columns % 2 === 0 ? 0 : length);
  const eight = new Float64Array(8);
  for (let from = 0; from < length; from += STRETCH) {
    const to = Math.min(length, from + STRETCH);
    for (let j = 0; j < sums.length; j += 2) {
      const pair = [sums[j]!, sums[j + 1] ?? spare];
      for (let i = 0; i < filled.length; i += 4) {
        for (let k = 0; k < 8; k++) {
          const [row, column] = [i + k % 4, j + (k >> 2)];
          eight[k] = row < vectors.length && column < sums.length ? weights.get(row, column) : 0;
        }
        addWeighted(filled.slice(i, i + 4), eight, pair, from, to);
      }
    }
  }
  return sums;
}
