import { assertAlmostEquals } from "@std/assert";
import { airHeat, estimates } from "../../lib/measured/mod.ts";

Deno.test("airHeat(): a cooling coil of the handbook", () => {
  // Source: ASHRAE Fundamentals, psychrometrics chapter, example of moist air cooling: 5 m³/s at
  // 30 degC and 50 % cooled to saturation at 10 degC need 197 kW and give 5.70 (0.0133 - 0.00766)
  // kg/s of water; from memory, its arithmetic closes
  const found = airHeat(estimates([30, 0.5, 10, 1, 5], [0, 0, 0, 0, 0]), 101325);
  assertAlmostEquals(found.heat, 197e3, 1e3);
  assertAlmostEquals(found.water, 5.7 * (0.0133 - 0.00766), 0.0005);
});
