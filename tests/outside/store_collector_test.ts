import { assert, assertAlmostEquals } from "@std/assert";
import { plateEfficiency, plateTransfer } from "../../lib/store/mod.ts";

const plate = { holeDiameter: 0.00159, pitch: 0.0168 };
const air = {
  suction: 0.05,
  crosswind: 0,
  density: 1.2,
  kinematicViscosity: 1.5e-5,
  conductivity: 0.0256,
  heatCapacity: 1006,
};

Deno.test("plateTransfer() gives the values of Kutscher 1994, recomputed from the formula", () => {
  // Source: Kutscher 1994 [kutscher-1994] (formula from memory), evaluated separately: holes of
  // 1.59 mm at 16.8 mm, 0.05 m/s; all printed digits
  const still = plateTransfer(plate, air);
  assertAlmostEquals(still.porosity, 0.0081233, 1e-7);
  assertAlmostEquals(still.nusselt, 2.63567, 5e-5);
  assertAlmostEquals(still.effectiveness, 0.50209, 5e-6);
  const windy = plateTransfer(plate, { ...air, crosswind: 2 });
  assertAlmostEquals(windy.nusselt, 3.57754, 5e-5);
  assertAlmostEquals(windy.effectiveness, 0.61192, 5e-6);
});

Deno.test("plateEfficiency() stays below the absorptance and rises with the suction", () => {
  // Property: radiation loses less the faster the air takes the heat away
  const collector = { ...plate, area: 20, sunShare: 0.3, absorptance: 0.95, emissivity: 0.9 };
  const slow = plateEfficiency(collector, { ...air, suction: 0.02 }, 20);
  const fast = plateEfficiency(collector, { ...air, suction: 0.06 }, 20);
  assert(slow > 0.5 && slow < fast && fast < 0.95);
});
