import { assert, assertAlmostEquals, assertThrows } from "@std/assert";
import fc from "fast-check";
import { OutOfRangeError } from "winterground/basics/mod.ts";
import { beamTransmittance, diffuseTransmittance, glazingShares } from "winterground/sun/mod.ts";

const optics = fc.record({
  refractiveIndex: fc.double({ min: 1.01, max: 2, noNaN: true }),
  extinction: fc.double({ min: 0, max: 300, noNaN: true }),
  thickness: fc.double({ min: 1e-4, max: 0.01, noNaN: true }),
  sheets: fc.integer({ min: 1, max: 4 }),
});

Deno.test("transmitted, reflected and absorbed light add up to one and stay within 0 and 1", () => {
  // Property: conservation, for any stack and angle
  fc.assert(
    fc.property(optics, fc.double({ min: 0, max: 90, noNaN: true }), (stack, angle) => {
      const shares = glazingShares(stack, angle);
      for (const share of Object.values(shares)) assert(share >= -1e-12 && share <= 1 + 1e-12);
      assertAlmostEquals(shares.transmitted + shares.reflected + shares.absorbed, 1, 1e-9);
    }),
    { seed: 2 },
  );
});

Deno.test("another sheet, more absorption and a flatter sun never let more light through", () => {
  // Property: monotone up to the angle where reflection across falls (Brewster's, single clear sheet)
  fc.assert(
    fc.property(optics, fc.double({ min: 0, max: 88, noNaN: true }), (stack, angle) => {
      const here = beamTransmittance(stack, angle);
      assert(beamTransmittance({ ...stack, sheets: stack.sheets + 1 }, angle) <= here + 1e-12);
      const darker = { ...stack, extinction: stack.extinction + 10 };
      assert(beamTransmittance(darker, angle) <= here + 1e-12);
      assertAlmostEquals(beamTransmittance(stack, 90), 0, 1e-9);
    }),
    { seed: 2 },
  );
});

Deno.test("diffuse light through nothing is all of it, and an index without meaning is refused", () => {
  // Property: limits
  const nothing = { refractiveIndex: 1, extinction: 0, thickness: 0.001, sheets: 2 };
  assertAlmostEquals(diffuseTransmittance(nothing), 1, 1e-9);
  assertThrows(() => beamTransmittance({ ...nothing, refractiveIndex: 0.9 }, 10), OutOfRangeError);
  assertThrows(() => beamTransmittance(nothing, 91), OutOfRangeError);
  assertThrows(() => beamTransmittance({ ...nothing, extinction: -1 }, 10), OutOfRangeError);
});
