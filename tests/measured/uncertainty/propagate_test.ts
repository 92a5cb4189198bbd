import { assertAlmostEquals, assertThrows } from "@std/assert";
import fc from "fast-check";
import { InputError } from "../../../lib/basics/mod.ts";
import { estimates, meansOfReadings, propagate } from "../../../lib/measured/mod.ts";

const size = () => fc.double({ min: 0.01, max: 10, noNaN: true });

Deno.test("propagate(): sums and differences of correlated values", () => {
  // Property: u2(a ± b) = u2(a) + u2(b) ± 2 r u(a) u(b)
  fc.assert(
    fc.property(size(), size(), fc.double({ min: -0.99, max: 0.99, noNaN: true }), (a, b, r) => {
      const inputs = estimates([20, 15], [a, b], [[1, r], [r, 1]]);
      const found = propagate(inputs, ([x, y]) => [x! + y!, x! - y!]);
      const both = a * a + b * b;
      assertAlmostEquals(found.uncertainties[0]! ** 2, both + 2 * r * a * b, 1e-8 * both);
      assertAlmostEquals(found.uncertainties[1]! ** 2, both - 2 * r * a * b, 1e-8 * both);
    }),
  );
});

Deno.test("propagate(): two probes off by the same amount leave the difference certain", () => {
  // Property: a fully shared error cancels in a difference
  const inputs = estimates([21, 17], [0.3, 0.3], [[1, 1], [1, 1]]);
  assertAlmostEquals(propagate(inputs, ([a, b]) => [a! - b!]).uncertainties[0]!, 0, 1e-6);
});

Deno.test("estimates() and meansOfReadings() refuse what cannot be", () => {
  // Property: told which number is wrong
  assertThrows(() => estimates([1], [-1]), InputError, "uncertainty 1 is -1");
  assertThrows(() => estimates([1, 2], [1]), InputError, "uncertainty 2");
  assertThrows(() => estimates([1, 2], [1, 1], [[1, 2], [2, 1]]), InputError, "1 with 2 is 2");
  assertThrows(() => estimates([1, 2], [1, 1], [[1, 0.2], [0.3, 1]]), InputError, "both ways");
  assertThrows(() => meansOfReadings([[1]]), InputError, "at least 2");
  assertThrows(() => meansOfReadings([[1, 2], [1]]), InputError, "2, 1");
});
