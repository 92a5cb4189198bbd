// Source: Ishigami & Homma 1990 [ishigami-1990], closed-form indices (from memory); SciPy on the same points
import { assert, assertAlmostEquals, assertEquals } from "@std/assert";
import fc from "fast-check";
import { mean, variance } from "d3-array";
import { sensitivityIndices, sensitivityPoints } from "../../../lib/worth/doubt/indices.ts";
import { latinHypercube, valueAt } from "../../../lib/worth/doubt/sampling.ts";

const ishigami = (row: readonly number[]) => {
  const [one, two, three] = row.map((share) => Math.PI * (2 * share - 1)) as [
    number,
    number,
    number,
  ];
  return Math.sin(one) + 7 * Math.sin(two) ** 2 + 0.1 * three ** 4 * Math.sin(one);
};

function indicesOf(model: (row: readonly number[]) => number, count: number, inputs = 3) {
  const points = sensitivityPoints(count, inputs, 20);
  return sensitivityIndices({
    first: points.first.map(model),
    second: points.second.map(model),
    mixed: points.mixed.map((rows) => rows.map(model)),
  });
}

Deno.test("Ishigami's function: first order 0.3139, 0.4424, 0; total 0.5576, 0.4424, 0.2437", () => {
  const found = indicesOf(ishigami, 16_384);
  [[0.3139, 0.5576], [0.4424, 0.4424], [0, 0.2437]].forEach(([first, total], input) => {
    assertAlmostEquals(found[input]!.first, first!, 0.02);
    assertAlmostEquals(found[input]!.total, total!, 0.01);
  });
});

Deno.test("SciPy 1.17.1, sobol_indices, on the same 1024 points of Ishigami's function", () => {
  const found = indicesOf(ishigami, 1024);
  [[0.34101071, 0.59070226], [0.45989737, 0.44098482], [0.00924471, 0.25816998]]
    .forEach(([first, total], input) => {
      assertAlmostEquals(found[input]!.first, first!, 5e-9);
      assertAlmostEquals(found[input]!.total, total!, 5e-9);
    });
});

Deno.test("a sum of independent inputs: each index its share of the variance, first equal to total", () => {
  const found = indicesOf(([one, two, three]) => 3 * one! + 2 * two! + three!, 8192);
  [9 / 14, 4 / 14, 1 / 14].forEach((share, input) => {
    assertAlmostEquals(found[input]!.first, share, 0.02);
    assertAlmostEquals(found[input]!.total, share, 0.01);
  });
});

Deno.test("an input that does nothing has indices of exactly nought", () => {
  const found = indicesOf(([one]) => one! ** 2, 64, 2);
  assertEquals(found[1], { first: 0, total: 0 });
  assertEquals(indicesOf(() => 5, 16, 2), [{ first: 0, total: 0 }, { first: 0, total: 0 }]);
});

Deno.test("mean and variance of a linear model are met: Latin hypercube", () => {
  // exact: mean of 2a + 3b on uniform 0 to 1 is 2.5, variance 13/12
  const values = latinHypercube(2000, 2, 1).map(([one, two]) => 2 * one! + 3 * two!);
  assertAlmostEquals(mean(values)!, 2.5, 2e-3);
  assertAlmostEquals(variance(values)! / (13 / 12), 1, 0.05);
});

Deno.test("every slice of a Latin hypercube is hit once in each column", () => {
  fc.assert(fc.property(
    fc.integer({ min: 1, max: 60 }),
    fc.integer({ min: 1, max: 5 }),
    fc.integer({ min: 0, max: 1e6 }),
    (count, columns, seed) => {
      const points = latinHypercube(count, columns, seed);
      for (let column = 0; column < columns; column++) {
        const slices = points.map((row) => Math.floor(row[column]! * count)).toSorted((a, b) =>
          a - b
        );
        assertEquals(slices, Array.from({ length: count }, (_, place) => place));
      }
      assertEquals(latinHypercube(count, columns, seed), points);
    },
  ));
});

Deno.test("a triangle has its ends, its mode and its mean", () => {
  const range = { shape: "triangle", low: 1, mode: 2, high: 5 } as const;
  assertEquals([valueAt(range, 0), valueAt(range, 1)], [1, 5]);
  assertAlmostEquals(valueAt(range, 0.25), 2, 1e-12);
  const values = Array.from(
    { length: 10_000 },
    (_, place) => valueAt(range, (place + 0.5) / 10_000),
  );
  assertAlmostEquals(mean(values)!, 8 / 3, 1e-3);
  assert(valueAt({ shape: "uniform", low: 3, high: 3 }, 0.4) === 3);
});
