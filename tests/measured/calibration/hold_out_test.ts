// Property: weeks apart, nothing of one side on the other; Source: ASHRAE Guideline 14 for the sums
import { assert, assertAlmostEquals, assertEquals, assertThrows } from "@std/assert";
import { InputError } from "../../../lib/basics/mod.ts";
import { agreementOn, heldWeeks, missesOn } from "../../../lib/measured/mod.ts";

Deno.test("heldWeeks(): every fourth week, whole, and never less than one", () => {
  // Property: count of held hours is the count of held weeks
  const { held, fittedWeeks, heldWeeks: weeks } = heldWeeks(24 * 7 * 9, 3600);
  assertEquals([fittedWeeks, weeks], [7, 2]);
  assertEquals(held.reduce((sum, one) => sum + one, 0), 2 * 168);
  assertEquals(held.slice(168 * 3, 168 * 4).every((one) => one === 1), true);
  assertThrows(() => heldWeeks(24 * 7 * 3, 3600), InputError, "3 whole weeks");
  assertThrows(() => heldWeeks(24 * 70, 3600, 1), InputError, "expected 2 weeks");
});

Deno.test("agreementOn(), missesOn(): each side by itself, gaps left out, p on the fitted side only", () => {
  // Source: ASHRAE Guideline 14 [ashrae-g14-2002], the twelve values of agreement() on the side held out
  const measured = [10, 12, 15, 11, 9, 13, 14, 16, 12, 10, 11, 9];
  const computed = [11, 12, 14, 13, 10, 12, 15, 16, 12, 11, 10, 10];
  const fittedSide = [100, 100, 100, NaN];
  const modelSide = [90, 90, 90, 5];
  const held = Uint8Array.from({ length: 16 }, (_, i) => i < 12 ? 1 : 0);
  const sides = agreementOn([...measured, ...fittedSide], [...computed, ...modelSide], held, {
    parameters: 1,
    per: "monthly",
  });
  assertAlmostEquals(sides.heldOut!.nmbe, -0.0281690, 5e-8);
  assertAlmostEquals(sides.heldOut!.cvRmse, 0.0845070, 5e-8);
  assertEquals([sides.heldOut!.parameters, sides.heldOut!.count, sides.heldOut!.within], [
    0,
    12,
    true,
  ]);
  assertAlmostEquals(sides.fitted.nmbe, 0.15, 1e-12);
  assertEquals([sides.fitted.count, sides.fitted.within], [3, false]);
  assert(sides.fitted.words.includes("measured less computed, p 1"), sides.fitted.words);
  assert(sides.fitted.words.endsWith("outside"));
  const misses = missesOn([...measured, ...fittedSide], [...computed, ...modelSide], held);
  assertEquals(misses.fitted, { count: 3, error: 10, bias: -10 });
  assertAlmostEquals(misses.heldOut!.error, 1, 1e-12);
  assertAlmostEquals(misses.heldOut!.bias, 4 / 12, 1e-12);
});
