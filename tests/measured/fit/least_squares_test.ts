import { assert, assertAlmostEquals, assertEquals, assertThrows } from "@std/assert";
import fc from "fast-check";
import { InputError } from "../../../lib/basics/mod.ts";
import { fitLeastSquares } from "../../../lib/measured/mod.ts";

const X = [0, 1, 2, 3, 4, 5, 6, 7];
const Y = [1.1, 2.9, 5.2, 6.8, 9.1, 11.2, 12.8, 15.1];

Deno.test("fitLeastSquares(): a straight line has its closed form", () => {
  // Property: slope Sxy/Sxx, its deviation s/sqrt(Sxx), correlation -mean/sqrt(mean of squares)
  const fit = fitLeastSquares(([a, b]) => X.map((x, i) => a! + b! * x - Y[i]!), [1, 1]);
  const mean = (list: readonly number[]) => list.reduce((sum, one) => sum + one) / list.length;
  const [x, y] = [mean(X), mean(Y)];
  const sxx = X.reduce((sum, one) => sum + (one - x) ** 2, 0);
  const slope = X.reduce((sum, one, i) => sum + (one - x) * (Y[i]! - y), 0) / sxx;
  const rest = X.reduce((sum, one, i) => sum + (Y[i]! - y - slope * (one - x)) ** 2, 0);
  assertAlmostEquals(fit.parameters[1]!, slope, 1e-10);
  assertAlmostEquals(fit.parameters[0]!, y - slope * x, 1e-10);
  assertAlmostEquals(fit.standardDeviations[1]!, Math.sqrt(rest / 6 / sxx), 1e-10);
  assertAlmostEquals(fit.correlation[0]![1]!, -x / Math.sqrt(mean(X.map((one) => one ** 2))), 1e-9);
  assertEquals([fit.degreesOfFreedom, fit.untold], [6, []]);
});

Deno.test("fitLeastSquares(): names what the data cannot tell apart", () => {
  // Property: of a product only the product is known: the same share of each, opposed, is untold
  const fit = fitLeastSquares(
    ([a, b, c]) => X.map((x, i) => a! + b! * c! * x - Y[i]!),
    [1, 1, 1],
  );
  assertAlmostEquals(fit.parameters[1]! * fit.parameters[2]!, 2.0, 0.05);
  assertEquals(fit.untold.length, 1);
  const [a, b, c] = fit.untold[0]!;
  assertAlmostEquals(a!, 0, 1e-6);
  assertAlmostEquals(b!, -c!, 1e-6);
  assert(Number.isFinite(fit.standardDeviations[0]!));
  assertEquals(fit.standardDeviations.slice(1), [Infinity, Infinity]);
});

Deno.test("fitLeastSquares(): truth lies in the interval about as often as it says", () => {
  // Property: normal noise on a decay; 95 % intervals hold the truth in 90 to 99 % of 300 fits
  let inside = 0;
  let seed = 1;
  const uniform = () => (seed = (seed * 48271) % 2147483647) / 2147483647;
  const normal = () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
  for (let round = 0; round < 300; round++) {
    const noisy = X.map((x) => 10 * Math.exp(-0.3 * x) + 0.2 * normal());
    const fit = fitLeastSquares(
      ([a, b]) => X.map((x, i) => a! * Math.exp(-b! * x) - noisy[i]!),
      [5, 0.1],
    );
    if (Math.abs(fit.parameters[1]! - 0.3) <= fit.halfWidths[1]!) inside++;
  }
  assert(inside >= 270 && inside <= 297, `${inside} of 300`);
});

Deno.test("fitLeastSquares(): units of a parameter change nothing else", () => {
  // Property: a parameter counted in other units gives the same fit in those units
  fc.assert(
    fc.property(fc.integer({ min: -6, max: 6 }), (power) => {
      const unit = 10 ** power;
      const one = fitLeastSquares(([a, b]) => X.map((x, i) => a! + b! * x - Y[i]!), [1, 1]);
      const other = fitLeastSquares(
        ([a, b]) => X.map((x, i) => a! + b! / unit * x - Y[i]!),
        [1, unit],
      );
      assertAlmostEquals(other.parameters[1]! / unit, one.parameters[1]!, 1e-9);
      assertAlmostEquals(
        other.standardDeviations[1]! / unit,
        one.standardDeviations[1]!,
        1e-9,
      );
    }),
    { numRuns: 13 },
  );
});

Deno.test("fitLeastSquares(): says when a fit cannot begin", () => {
  // Property: too few values or a start without value are told to the user
  assertThrows(() => fitLeastSquares(([a]) => [a!], [1]), InputError, "fit fewer");
  assertThrows(() => fitLeastSquares(() => [NaN, 1, 2], [1]), InputError, "another start");
});
