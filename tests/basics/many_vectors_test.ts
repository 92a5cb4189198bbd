import { assertAlmostEquals, assertEquals } from "@std/assert";
import fc from "fast-check";
import { Matrix } from "ml-matrix";
import { symmetricProducts, weightedSums } from "../../lib/basics/linear/many_vectors.ts";
import { dot } from "../../lib/basics/linear/vectors.ts";

/** Vectors by formula, longer than one stretch. */
function vectors(count: number, length: number): Float64Array[] {
  return Array.from(
    { length: count },
    (_, i) => Float64Array.from({ length }, (_, k) => Math.sin(1 + 7 * i + (0.3 + 0.01 * i) * k)),
  );
}

const sizes = fc.record({
  count: fc.integer({ min: 1, max: 11 }),
  length: fc.integer({ min: 1, max: 2500 }),
});

Deno.test("symmetricProducts() are the products two by two, whatever the number of vectors", () => {
  // Property: each entry is the scalar product
  fc.assert(
    fc.property(sizes, ({ count, length }) => {
      const list = vectors(count, length);
      const products = symmetricProducts(list);
      assertEquals([products.rows, products.columns], [count, count]);
      list.forEach((a, i) =>
        list.forEach((b, j) => assertAlmostEquals(products.get(i, j), dot(a, b), 1e-9))
      );
    }),
    { numRuns: 40 },
  );
});

Deno.test("weightedSums() are the sums one by one", () => {
  // Property: each value is the sum of the vectors there with their weights
  fc.assert(
    fc.property(sizes, fc.integer({ min: 1, max: 5 }), ({ count, length }, wanted) => {
      const list = vectors(count, length);
      const weights = new Matrix(
        list.map((_, i) => Array.from({ length: wanted }, (_, j) => Math.cos(i + 3 * j))),
      );
      const sums = weightedSums(list, weights);
      assertEquals(sums.map((sum) => sum.length), new Array(wanted).fill(length));
      sums.forEach((sum, j) =>
        [0, length >> 1, length - 1].forEach((k) => {
          const expected = list.reduce((total, v, i) => total + weights.get(i, j) * v[k]!, 0);
          assertAlmostEquals(sum[k]!, expected, 1e-12);
        })
      );
    }),
    { numRuns: 40 },
  );
});
