import { assert, assertAlmostEquals } from "@std/assert";
import fc from "fast-check";
import { HEAT_OF_SUBLIMATION, HEAT_OF_VAPORISATION } from "../../../lib/air/mod.ts";
import { houseModel, stepHouse } from "../../../lib/house/mod.ts";
import { heatPerVapour } from "../../../lib/house/air/frozen_surface.ts";
import { HOUSE, NO_FLOOR, simpleYear } from "../fixtures.ts";

const climate = simpleYear({ temperature: () => -10 });
const model = houseModel({ ...HOUSE, crop: "bare", leafArea: 0, curtain: null }, climate);

function stepAt(floorTemperature: number) {
  const film = model.floorFilm * model.geometry.floorArea;
  const start = {
    airTemperature: floorTemperature,
    humidityRatio: 0.0005,
    massTemperature: floorTemperature,
    masonryTemperature: floorTemperature,
    ventOpening: 0,
  };
  const boundary = { ...NO_FLOOR, floorConductance: 0.99 * film, floorTemperature };
  return stepHouse(model, start, 0, 60, boundary);
}

Deno.test("what leaves a frozen floor takes the heat of sublimation, from a thawed one that of vaporisation", () => {
  // Property: ice turns to vapour without melting first: fusion and vaporisation together, 2.834e6
  // J/kg at 0 degC (ASHRAE Fundamentals 2017 [ashrae-2017] ch. 1, from memory: 2.830 to 2.835e6)
  assertAlmostEquals(HEAT_OF_SUBLIMATION, 2.834e6, 2e3);
  for (
    const [soil, heat] of [[-8, HEAT_OF_SUBLIMATION], [8, HEAT_OF_VAPORISATION]] as const
  ) {
    const { flows } = stepAt(soil);
    assert(flows.evaporated > 0, `${soil} degC`);
    // mist and cover take no part in the dry air of this step
    assertAlmostEquals(-flows.evaporation / flows.evaporated / heat, 1, 1e-9, `${soil} degC`);
  }
});

Deno.test("the heat that vapour from the floor takes goes from ice to water without a jump", () => {
  // Property: continuity through the freezing of the surface
  fc.assert(fc.property(fc.double({ min: -2, max: 1, noNaN: true }), (surface) => {
    const change = heatPerVapour(surface) - heatPerVapour(surface + 1e-3);
    assert(change >= 0 && change < 1e3, `${surface}`);
  }));
});
