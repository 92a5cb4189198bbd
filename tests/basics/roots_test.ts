import { assert, assertAlmostEquals, assertEquals } from "@std/assert";
import fc from "fast-check";
import { halve, straightBetween } from "../../lib/basics/mod.ts";

Deno.test("halve() closes in on the square root of two from either side, to rounding", () => {
  // Source: √2 as IEEE 754 has it (ECMAScript Math.SQRT2)
  const rising = halve((x) => x * x <= 2, 1, 2);
  assert(rising.holds <= Math.SQRT2 && Math.SQRT2 <= rising.fails);
  assertAlmostEquals(rising.fails - rising.holds, 0, 3e-16);
  const falling = halve((x) => x * x >= 2, 2, 1);
  assert(falling.fails <= Math.SQRT2 && Math.SQRT2 <= falling.holds);
});

Deno.test("halve() keeps the turn between its ends and stops at the width asked for", () => {
  // Property: wherever the turn lies; the two ends are never tried
  fc.assert(
    fc.property(
      fc.double({ min: -50, max: 50, noNaN: true }),
      fc.constantFrom(0, 1e-3, 1, 1000),
      (turn, within) => {
        let tried = 0;
        const found = halve((x) => (tried++, x <= turn), -60, 60, within);
        assert(found.holds <= turn && turn < found.fails);
        assert(within === 0 ? tried < 1200 : found.fails - found.holds <= within);
      },
    ),
  );
  assertEquals(halve(() => true, 3, 3), { holds: 3, fails: 3 });
});

Deno.test("straightBetween() meets its points, holds its ends and stays between neighbours", () => {
  // Property: any rising places
  fc.assert(
    fc.property(
      fc.uniqueArray(fc.integer({ min: -1000, max: 1000 }), { minLength: 1, maxLength: 12 }),
      fc.integer({ min: -1200, max: 1200 }),
      (places, where) => {
        const at = places.toSorted((a, b) => a - b);
        const values = at.map((place) => 3 * Math.sin(place));
        at.forEach((place, i) =>
          assertAlmostEquals(straightBetween(at, values, place), values[i]!, 1e-12)
        );
        const found = straightBetween(at, values, where);
        const upper = at.findIndex((place) => place >= where);
        const near = upper < 0
          ? [values.at(-1)!]
          : [values[Math.max(0, upper - 1)]!, values[upper]!];
        assert(found >= Math.min(...near) - 1e-12 && found <= Math.max(...near) + 1e-12);
      },
    ),
  );
  assertAlmostEquals(straightBetween([0, 10], [32, 50], 5), 41, 1e-12);
});
