import { assertAlmostEquals } from "@std/assert";
import { humidityRatioFromRelativeHumidity, moistEnthalpy } from "../../lib/air/mod.ts";
import { marchTube, type MoistAir, wallExchange } from "../../lib/tubes/mod.ts";

const PRESSURE = 101325;
const air = (temperature: number, humidity: number): MoistAir => ({
  temperature,
  humidityRatio: humidityRatioFromRelativeHumidity(temperature, humidity, PRESSURE),
});

Deno.test("marchTube() cools 28 °C air to 18 °C saturated in a very long tube: 26.1 and 13.6 kJ/kg, latent share 0.61 and 0.26", () => {
  // Source: recomputed from ASHRAE Fundamentals [ashrae-2017] ch. 1 moist-air formulas (end states
  // fix the heat)
  const rows = [[0.8, 6.19, 26.1, 0.61], [0.6, 1.31, 13.6, 0.26]] as const;
  for (const [humidity, water, heat, latentShare] of rows) {
    const inlet = air(28, humidity);
    const march = marchTube({
      inlet,
      wallTemperatures: new Float64Array(400).fill(18),
      waterSupply: 0,
      diameter: 0.102,
      length: 400,
      filmCoefficient: 9,
      dryAirFlow: 0.02,
      pressure: PRESSURE,
    });
    assertAlmostEquals(march.outlet.temperature, 18, 0.01);
    assertAlmostEquals(1000 * march.condensate / 0.02, water, 0.03);
    const drop = moistEnthalpy(28, inlet.humidityRatio) -
      moistEnthalpy(march.outlet.temperature, march.outlet.humidityRatio);
    assertAlmostEquals(drop / 1000, heat, 0.1);
    // the share counts the vapour's own sensible heat as latent: all but 1.006 kJ/(kg K) of dry air
    const dryAir = 1006 * (28 - march.outlet.temperature);
    assertAlmostEquals(1 - dryAir / drop, latentShare, 0.006);
  }
});

Deno.test("marchTube() condenses 0.0325 kg/s and takes 198 kW from 5 m³/s of 30 °C, 50 % air cooled to 10 °C (ASHRAE Fundamentals ch. 1 ex. 3)", () => {
  // Source: ASHRAE Fundamentals [ashrae-2017] ch. 1 example 3 (statement), recomputed with real-gas
  // air: 5.70 kg/s, 0.0325 kg/s, 198.18 kW; chart reading 197 kW; 1 %
  const inlet = air(30, 0.5);
  const volume = 287.042 * 303.15 * (1 + 1.607858 * inlet.humidityRatio) / PRESSURE;
  const dryAirFlow = 5 / volume;
  assertAlmostEquals(dryAirFlow, 5.70, 0.005 * 5.7);
  const march = marchTube({
    inlet,
    wallTemperatures: new Float64Array(200).fill(10),
    waterSupply: 0,
    diameter: 1,
    length: 4000,
    filmCoefficient: 9,
    dryAirFlow,
    pressure: PRESSURE,
  });
  assertAlmostEquals(march.outlet.temperature, 10, 0.02);
  assertAlmostEquals(march.condensate, 0.0325, 0.01 * 0.0325);
  assertAlmostEquals(march.sensible + march.latent, 198_180, 0.01 * 198_180);
});

Deno.test("a wet wall without heat takes the wet-bulb temperature: 20 °C in air of 40 °C and W 0.0065 (ASHRAE Fundamentals ch. 1 ex. 1)", () => {
  // Source: ASHRAE Fundamentals [ashrae-2017] ch. 1 example 1: 40 °C dry bulb, 20 °C wet bulb, W
  // 0.0065. That is the thermodynamic wet bulb; a wall that exchanges by Chilton & Colburn with Le
  // 0.85 comes out lower by (1 − Le^(2/3)) of about 10 % of the evaporation, hence 1 K
  const heat = (wallTemperature: number): number => {
    const { sensible, latent } = wallExchange({
      inlet: { temperature: 40, humidityRatio: 0.0065 },
      wallTemperature,
      surface: 1e-4,
      filmCoefficient: 9,
      dryAirFlow: 1,
      pressure: PRESSURE,
      waterSupply: Infinity,
    });
    return sensible + latent;
  };
  let [low, high] = [10, 30];
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (heat(middle) > 0) low = middle;
    else high = middle;
  }
  assertAlmostEquals(low, 20, 1);
});
