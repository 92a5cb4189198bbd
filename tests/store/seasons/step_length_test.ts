// Property: the exponential that the mean belongs to, and a straight line where there is none
import { assertAlmostEquals, assertEquals } from "@std/assert";
import fc from "fast-check";
import { bendOf } from "../../../lib/store/seasons/step_length.ts";

Deno.test("bendOf() finds the time constants of an exponential from its mean, warming or cooling", () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0.01, max: 30, noNaN: true }),
      fc.double({ min: -30, max: 30, noNaN: true }),
      fc.double({ min: 0.1, max: 20, noNaN: true }),
      fc.boolean(),
      (constants, start, rise, cooling) => {
        const way = cooling ? -rise : rise;
        const weight = -1 / Math.expm1(-constants) - 1 / constants;
        const found = bendOf(start, start + weight * way, start + way);
        assertAlmostEquals(found, constants, 1e-3 + 1e-4 * constants);
      },
    ),
    { seed: 1 },
  );
});

Deno.test("bendOf() is nought where the air rests, goes straight or is late", () => {
  assertEquals(bendOf(4, 4, 4), 0);
  assertEquals(bendOf(0, 1, 2), 0);
  assertEquals(bendOf(0, 0.4, 2), 0);
  assertAlmostEquals(bendOf(0, 2, 2), 60, 1e-3);
});
