import { assert, assertAlmostEquals } from "@std/assert";
import { houseModel, stepHouse, withHeater } from "../../../lib/house/mod.ts";
import { endWeight } from "../../../lib/house/air/end_weight.ts";
import { HOUSE, NO_FLOOR, simpleYear } from "../fixtures.ts";

Deno.test("endWeight() is that of what decays exponentially, at any length", () => {
  // Property: the mean of e^(−xt) over 0 to 1 is (1 − e^(−x))/x; ½ in short steps and 1 in long ones
  for (const x of [1e-6, 9e-4, 1.1e-3, 0.1, 0.5, 2, 10, 300]) {
    const mean = -Math.expm1(-x) / x;
    const weight = endWeight(x);
    assertAlmostEquals(weight * Math.exp(-x) + 1 - weight, mean, 1e-9, `${x}`);
  }
  assertAlmostEquals(endWeight(0), 0.5, 1e-12);
  assert(endWeight(1e4) > 0.9998 && endWeight(1e4) < 1);
});

/** A dry house of air in a leaking box, which cools to the air outside. */
function box() {
  const inputs = {
    ...HOUSE,
    leafArea: 0,
    leakage: 0,
    leakageWind: 3,
    curtain: null,
    waterVolume: 0,
  };
  const climate = simpleYear({ temperature: () => -10, wind: 1 });
  return withHeater({
    ...houseModel(inputs, climate),
    floorVapour: 0,
    coverArea: 0,
    glazingConductance: new Float64Array(8760),
    opaqueConductance: new Float64Array(8760),
    filmArea: new Float64Array(8760),
  }, 0);
}

Deno.test("one long step ends and means what many short ones do where nothing is bent", () => {
  // Property: exact exponential: T = T_out + (T₀ − T_out)·e^(−G t/C)
  const model = box();
  const start = {
    airTemperature: 20,
    humidityRatio: 0.001,
    massTemperature: 20,
    masonryTemperature: 20,
    ventOpening: 0,
  };
  const { state, mean, flows } = stepHouse(model, start, 0, 3600, NO_FLOOR);
  const x = 3600 * -flows.leakage / (mean.airTemperature + 10) / model.airCapacity;
  assert(x > 0.2, `${x}`);
  assertAlmostEquals(state.airTemperature, -10 + 30 * Math.exp(-x), 1e-6);
  assertAlmostEquals(mean.airTemperature, -10 - 30 * Math.expm1(-x) / x, 1e-6);
  let [short, sum] = [start, 0];
  for (let part = 0; part < 360; part++) {
    const step = stepHouse(model, short, 0, 10, NO_FLOOR);
    short = step.state;
    sum += step.mean.airTemperature / 360;
  }
  assertAlmostEquals(state.airTemperature, short.airTemperature, 1e-3);
  assertAlmostEquals(mean.airTemperature, sum, 1e-3);
  assertAlmostEquals(state.humidityRatio, short.humidityRatio, 1e-6);
});
