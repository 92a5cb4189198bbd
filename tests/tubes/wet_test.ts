import { WATER_HEAT_CAPACITY } from "../../lib/basics/mod.ts";
import { assert, assertAlmostEquals, assertGreater, assertLess } from "@std/assert";
import fc from "fast-check";
import {
  humidityRatioFromRelativeHumidity,
  moistEnthalpy,
  saturationHumidityRatio,
} from "../../lib/air/mod.ts";
import { effectiveness, marchTube, type WallPiece } from "../../lib/tubes/mod.ts";
import { wallExchange } from "../../lib/tubes/wet.ts";

const PRESSURE = 101325;
const pieces: fc.Arbitrary<WallPiece> = fc.record({
  temperature: fc.double({ min: -5, max: 40, noNaN: true }),
  humidity: fc.double({ min: 0.05, max: 1, noNaN: true }),
  wallTemperature: fc.double({ min: 0, max: 35, noNaN: true }),
  surface: fc.double({ min: 0.01, max: 10, noNaN: true }),
  filmCoefficient: fc.double({ min: 2, max: 30, noNaN: true }),
  dryAirFlow: fc.double({ min: 0.005, max: 0.1, noNaN: true }),
  waterSupply: fc.constantFrom(0, 1e-5, Infinity),
}).map(({ temperature, humidity, ...rest }) => ({
  ...rest,
  pressure: PRESSURE,
  inlet: {
    temperature,
    humidityRatio: humidityRatioFromRelativeHumidity(temperature, humidity, PRESSURE),
  },
}));

Deno.test("wallExchange() closes energy and water for any air and wall", () => {
  // Property: conservation of energy and of water
  fc.assert(fc.property(pieces, (piece) => {
    const { inlet, dryAirFlow, wallTemperature } = piece;
    const { outlet, sensible, latent, condensate, mist } = wallExchange(piece);
    const water = dryAirFlow * (inlet.humidityRatio - outlet.humidityRatio);
    assertAlmostEquals(condensate + mist, water, 1e-12);
    const energy = dryAirFlow * (moistEnthalpy(inlet.temperature, inlet.humidityRatio) -
      moistEnthalpy(outlet.temperature, outlet.humidityRatio));
    const liquid = WATER_HEAT_CAPACITY *
      (condensate * wallTemperature + mist * outlet.temperature);
    assertAlmostEquals(sensible + latent + liquid, energy, 1e-6 * (1 + Math.abs(energy)));
  }));
});

Deno.test("wallExchange() never leaves the air over-saturated nor evaporates more than there is", () => {
  // Property: second law and supply
  fc.assert(fc.property(pieces, (piece) => {
    const { outlet, condensate, mist } = wallExchange(piece);
    const most = saturationHumidityRatio(outlet.temperature, PRESSURE);
    const inletExcess = piece.inlet.humidityRatio -
      saturationHumidityRatio(piece.inlet.temperature, PRESSURE);
    assert(outlet.humidityRatio <= most * (1 + 1e-9) || inletExcess > 0);
    assert(condensate >= -piece.waterSupply && mist >= -1e-15);
  }));
});

Deno.test("marchTube() gives the effectiveness of a dry tube whatever the number of pieces", () => {
  // Property: a chain of pieces equals one exponential
  const inlet = { temperature: 28, humidityRatio: 0.004 };
  const dry = { inlet, diameter: 0.102, length: 15, filmCoefficient: 9, dryAirFlow: 0.02 };
  const capacity = 0.02 * (1006 + 0.004 * 1860);
  const expected = effectiveness(9 * Math.PI * 0.102 * 15 / capacity);
  for (const count of [1, 7, 40]) {
    const walls = new Float64Array(count).fill(18);
    const march = marchTube({
      ...dry,
      wallTemperatures: walls,
      waterSupply: 0,
      pressure: PRESSURE,
    });
    assertAlmostEquals((28 - march.outlet.temperature) / 10, expected, 1e-9);
    assertAlmostEquals(march.latent, 0, 1e-12);
  }
});

Deno.test("marchTube() condenses moist air on a cold wall and evaporates into dry air from a wet one", () => {
  // Property: directions
  const walls = new Float64Array(20).fill(14);
  const tube = {
    diameter: 0.102,
    length: 20,
    filmCoefficient: 9,
    dryAirFlow: 0.02,
    pressure: PRESSURE,
    wallTemperatures: walls,
    waterSupply: Infinity,
  };
  const moist = marchTube({
    ...tube,
    inlet: {
      temperature: 28,
      humidityRatio: humidityRatioFromRelativeHumidity(28, 0.8, PRESSURE),
    },
  });
  assertGreater(moist.condensate, 0);
  assertGreater(moist.latent, 0);
  const dry = marchTube({
    ...tube,
    inlet: { temperature: 6, humidityRatio: humidityRatioFromRelativeHumidity(6, 0.6, PRESSURE) },
  });
  assertLess(dry.condensate, 0);
  assertLess(dry.latent, 0);
  assertLess(dry.sensible, 0);
  const without = marchTube({
    ...tube,
    waterSupply: 0,
    inlet: { temperature: 6, humidityRatio: 0.003 },
  });
  assertAlmostEquals(without.condensate, 0, 1e-15);
});
