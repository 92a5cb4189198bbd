import { assert, assertAlmostEquals } from "@std/assert";
import { humidityRatioFromRelativeHumidity } from "../../../lib/air/mod.ts";
import { houseModel, stepHouse } from "../../../lib/house/mod.ts";
import { HOUSE, NO_FLOOR, simpleYear } from "../fixtures.ts";

const climate = simpleYear({ temperature: () => 5, sun: 0.6 });
const model = houseModel({ ...HOUSE, crop: "bare", leafArea: 0, curtain: null }, climate);
const start = {
  airTemperature: 15,
  humidityRatio: 0.006,
  massTemperature: 15,
  masonryTemperature: 15,
  ventOpening: 0,
};
const film = model.floorFilm * model.geometry.floorArea;
const NOON = 171 * 24 + 12;
const NIGHT = 171 * 24;

/** A step, and degC of the floor's surface behind its film. */
function stepAt(hour: number, floorConductance: number, floorTemperature: number) {
  const boundary = { ...NO_FLOOR, floorConductance, floorTemperature };
  const step = stepHouse(model, start, hour, 900, boundary);
  return { ...step, surface: step.floorDriving + step.flows.floor / film };
}

Deno.test("the wet floor evaporates at the temperature of its surface, by day and by night", () => {
  // Property: definition: kg/s = conductance × (saturated at the surface − air, mean over the step),
  // the surface at the driving temperature less the heat through the film; within 1 % of a gram
  for (const hour of [NOON, NIGHT]) {
    for (const [conductance, soil] of [[0.3, 12], [0.6, 25], [0, 0]] as const) {
      const { mean, flows, surface } = stepAt(hour, conductance * film, soil);
      const saturated = humidityRatioFromRelativeHumidity(surface, 1, model.pressure);
      const wanted = model.floorVapour * (saturated - mean.humidityRatio);
      assert(wanted > 0, `${hour} ${conductance}: ${surface} degC`);
      assertAlmostEquals(flows.evaporated / wanted, 1, 0.01, `${hour} ${conductance}`);
    }
  }
});

Deno.test("sun on the floor dries it, and what evaporates cools it", () => {
  // Property: direction; the same soil and air, with and without sun, with and without water
  const [noon, night] = [stepAt(NOON, 0.5 * film, 15), stepAt(NIGHT, 0.5 * film, 15)];
  assert(noon.flows.evaporated > 1.3 * night.flows.evaporated);
  const dry = { ...model, floorVapour: 0 };
  const boundary = { ...NO_FLOOR, floorConductance: 0.5 * film, floorTemperature: 15 };
  const { floorDriving, flows } = stepHouse(dry, start, NOON, 900, boundary);
  assert(floorDriving + flows.floor / film > noon.surface);
});
