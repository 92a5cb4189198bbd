import { assert, assertAlmostEquals, assertThrows } from "@std/assert";
import fc from "fast-check";
import { InputError } from "../../../lib/basics/mod.ts";
import { airHeat, estimates } from "../../../lib/measured/mod.ts";

const PRESSURE = 101325;
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

Deno.test("airHeat(): parts sum, and flow scales all of them", () => {
  // Property: heat is sensible and latent; twice the air leaves twice the heat and water
  fc.assert(
    fc.property(
      fc.tuple(between(5, 35), between(0.2, 1), between(5, 25), between(0.2, 1)),
      between(0.01, 2),
      (ends, flow) => {
        const one = airHeat(estimates([...ends, flow], [0, 0, 0, 0, 0]), PRESSURE);
        const two = airHeat(estimates([...ends, 2 * flow], [0, 0, 0, 0, 0]), PRESSURE);
        assertAlmostEquals(one.sensible + one.latent, one.heat, 1e-6);
        assertAlmostEquals(two.heat, 2 * one.heat, 1e-6 * (1 + Math.abs(one.heat)));
        assertAlmostEquals(two.water, 2 * one.water, 1e-9);
      },
    ),
  );
});

Deno.test("airHeat(): the flow's share of doubt is the heat's; shared probe errors cancel", () => {
  // Property: heat is proportional to flow; in dry air only the difference of temperatures counts
  const flowOnly = airHeat(estimates([25, 0.5, 15, 0.8, 0.4], [0, 0, 0, 0, 0.02]), PRESSURE);
  assertAlmostEquals(flowOnly.heatUncertainty / Math.abs(flowOnly.heat), 0.05, 1e-6);
  const u = [0.3, 0, 0.3, 0, 0];
  const together = [
    [1, 0, 1, 0, 0],
    [0, 1, 0, 0, 0],
    [1, 0, 1, 0, 0],
    [0, 0, 0, 1, 0],
    [0, 0, 0, 0, 1],
  ];
  const dry = [25, 0, 15, 0, 0.4];
  const apart = airHeat(estimates(dry, u), PRESSURE).heatUncertainty;
  const shared = airHeat(estimates(dry, u, together), PRESSURE).heatUncertainty;
  // left over: the density at the intake, 0.3 K in 298 K of 10 K
  assert(shared < 0.03 * apart, `${shared} W of ${apart} W`);
});

Deno.test("airHeat(): refuses readings that are missing or backward", () => {
  // Property: told which reading is wrong
  const zeros = [0, 0, 0, 0, 0];
  assertThrows(
    () => airHeat({ values: [25, 0.5, NaN, 0.8, 1], covariance: [] }, PRESSURE),
    InputError,
    "outletTemperature",
  );
  assertThrows(
    () => airHeat(estimates([25, 0.5, 15, 0.8, -1], zeros), PRESSURE),
    InputError,
    "swap",
  );
  assertThrows(() => airHeat(estimates([25, 1.2, 15, 0.8, 1], zeros), PRESSURE), InputError, "wet");
});
