import { assertAlmostEquals } from "@std/assert";
import { DEFAULTS } from "../../harness/defaults.ts";
import { leakageRate } from "../../../lib/house/mod.ts";

Deno.test("leakageRate() grows with the root of the temperature difference and with wind", () => {
  // Source: stack flow ∝ √ΔT, ASHRAE Fundamentals 2017 [ashrae-2017] ch. 16.
  const house = { ...DEFAULTS.house, leakage: 0.5, leakageWind: 0.1 };
  assertAlmostEquals(leakageRate(house, 20, 0), 0.5, 1e-12);
  assertAlmostEquals(leakageRate(house, 80, 0), 1, 1e-12);
  assertAlmostEquals(leakageRate(house, 0, 4), 0.4, 1e-12);
});
