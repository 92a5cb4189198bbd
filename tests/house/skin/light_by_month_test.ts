import { assert, assertAlmostEquals } from "@std/assert";
import { lightByMonth } from "../../../lib/house/mod.ts";
import { HOUSE, simpleYear } from "../fixtures.ts";

Deno.test("lightByMonth() adds up month by month", () => {
  // Property: conservation
  const months = lightByMonth(HOUSE, simpleYear({ temperature: () => 5, sun: 0.6 }));
  for (const { letIn, crop, floor, mass, air, out, throughSolid } of months) {
    assert(letIn > 0 && mass > 0);
    assertAlmostEquals(crop + floor + mass + air + out + throughSolid, letIn, 1e-9 * letIn);
  }
});
