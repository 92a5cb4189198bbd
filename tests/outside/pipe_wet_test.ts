import { assertAlmostEquals } from "@std/assert";
import { humidityRatioFromRelativeHumidity, moistEnthalpy } from "../../lib/air/mod.ts";
import { marchTube, type MoistAir } from "../../lib/tubes/mod.ts";

const PRESSURE = 101325;
const air = (temperature: number, humidity: number): MoistAir => ({
  temperature,
  humidityRatio: humidityRatioFromRelativeHumidity(temperature, humidity, PRESSURE),
});

Deno.test("marchTube() cools 28 °C air to 18 °C saturated in a very long tube: 26.1 and 13.6 kJ/kg, latent share 0.61 and 0.26", () => {
  // Source: recomputed from ASHRAE Fundamentals ch. 1 moist-air formulas (end states fix the heat)
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
