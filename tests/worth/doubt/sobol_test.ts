// Source: SciPy 1.17.1, scipy.stats.qmc.Sobol without scrambling, 30 bits, 40 columns.
import { assert, assertEquals } from "@std/assert";
import { mean } from "d3-array";
import { SOBOL_COLUMNS, sobolPoints } from "winterground/worth/doubt/sobol.ts";

/** Point by its place in the sequence: columns 1 to 21. */
const SCIPY: ReadonlyMap<number, readonly number[]> = new Map([
  [1, Array(21).fill(0.5)],
  // deno-fmt-ignore
  [2, [0.75, 0.25, 0.25, 0.25, 0.75, 0.75, 0.25, 0.75, 0.75, 0.75, 0.75, 0.75, 0.25, 0.25, 0.75, 0.25, 0.75, 0.25, 0.75, 0.25, 0.25]],
  // deno-fmt-ignore
  [10, [0.9375, 0.0625, 0.6875, 0.1875, 0.3125, 0.5625, 0.1875, 0.1875, 0.1875, 0.5625, 0.4375, 0.8125, 0.6875, 0.6875, 0.0625, 0.6875, 0.0625, 0.5625, 0.1875, 0.0625, 0.4375]],
  // deno-fmt-ignore
  [37, [0.921875, 0.640625, 0.578125, 0.921875, 0.765625, 0.296875, 0.171875, 0.796875, 0.609375, 0.171875, 0.015625, 0.078125, 0.578125, 0.859375, 0.109375, 0.484375, 0.796875, 0.421875, 0.046875, 0.140625, 0.953125]],
  // deno-fmt-ignore
  [63, [0.015625, 0.796875, 0.359375, 0.453125, 0.859375, 0.140625, 0.578125, 0.140625, 0.828125, 0.578125, 0.421875, 0.671875, 0.546875, 0.765625, 0.328125, 0.765625, 0.078125, 0.390625, 0.953125, 0.234375, 0.234375]],
]);

Deno.test("sobolPoints() gives the points of SciPy 1.17.1's Sobol(21, scramble=False)", () => {
  const points = sobolPoints(64, 21, 0);
  assertEquals(points[0], Array(21).fill(0));
  for (const [place, expected] of SCIPY) assertEquals(points[place], expected);
});

Deno.test("sobolPoints() with a shift hits each of 64 slices once in every column, as a Latin hypercube does", () => {
  const points = sobolPoints(64, SOBOL_COLUMNS, 7);
  for (let column = 0; column < SOBOL_COLUMNS; column++) {
    const slices = new Set(points.map((row) => Math.floor(row[column]! * 64)));
    assertEquals(slices.size, 64, `column ${column}`);
  }
  assertEquals(points, sobolPoints(64, SOBOL_COLUMNS, 7));
  assert(points[0]![0] !== sobolPoints(64, SOBOL_COLUMNS, 8)[0]![0]);
});

Deno.test("sobolPoints() come nearer to the mean of a smooth function than as many independent draws would", () => {
  // Π 12/13·(1 + (x − 1/2)²) over 6 columns has mean 1; independent draws err by about 0.07/√256
  const value = (row: readonly number[]) =>
    row.reduce((product, x) => product * (1 + (x - 0.5) ** 2) * 12 / 13, 1);
  const error = Math.abs(mean(sobolPoints(256, 6, 3), value)! - 1);
  assert(error < 0.07 / Math.sqrt(256) / 3, String(error));
});
