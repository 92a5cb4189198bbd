import { assert, assertAlmostEquals, assertEquals, assertThrows } from "@std/assert";
import fc from "fast-check";
import { InputError } from "../../../lib/basics/mod.ts";
import { agreement, AGREEMENT_LIMITS } from "../../../lib/measured/mod.ts";

const MEASURED = [10, 12, 15, 11, 9, 13, 14, 16, 12, 10, 11, 9];
const SIMULATED = [11, 12, 14, 13, 10, 12, 15, 16, 12, 11, 10, 10];

Deno.test("agreement(): twelve months by the formulas of Guideline 14", () => {
  // Source: ASHRAE Guideline 14-2002, NMBE and CV(RMSE); the sums by hand: mean 11.8333, sum of
  // the gaps -4, of their squares 12
  const edition = agreement(MEASURED, SIMULATED);
  assertAlmostEquals(edition.nmbe, -0.0307298, 5e-8);
  assertAlmostEquals(edition.cvRmse, 0.0882647, 5e-8);
  assertEquals(edition.parameters, 1);
  const common = agreement(MEASURED, SIMULATED, 0);
  assertAlmostEquals(common.nmbe, -0.0281690, 5e-8);
  assertAlmostEquals(common.cvRmse, 0.0845070, 5e-8);
  assertEquals(AGREEMENT_LIMITS.monthly, { nmbe: 0.05, cvRmse: 0.15 });
  assertEquals(AGREEMENT_LIMITS.hourly, { nmbe: 0.1, cvRmse: 0.3 });
});

Deno.test("agreement(): sign, scale and a perfect model", () => {
  // Property: a model too high by a share has minus that share as NMBE; units do not matter
  const values = fc.array(fc.double({ min: 1, max: 1e4, noNaN: true }), { minLength: 2 });
  fc.assert(fc.property(values, fc.double({ min: -0.9, max: 2, noNaN: true }), (list, share) => {
    const off = agreement(list, list.map((one) => one * (1 + share)), 0);
    assertAlmostEquals(off.nmbe, -share, 1e-9);
    assert(off.cvRmse >= Math.abs(share) - 1e-9);
    assertEquals(agreement(list, list, 0), { nmbe: 0, cvRmse: 0, parameters: 0 });
  }));
});

Deno.test("agreement(): says what is wrong with the lists", () => {
  // Property: no figure from lists that do not belong together
  assertThrows(() => agreement([1, 2], [1]), InputError, "2 measured and 1 simulated");
  assertThrows(() => agreement([1], [1]), InputError, "measure longer");
  assertThrows(() => agreement([1, 2, 3], [1, NaN, 3]), InputError, "value 2 is missing");
  assertThrows(() => agreement([1, -1, 0], [1, 2, 3]), InputError, "mean of 0");
});
