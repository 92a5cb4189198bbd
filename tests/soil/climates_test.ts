import { assert } from "@std/assert";
import fc from "fast-check";
import {
  annualHarmonic,
  type DailyWeather,
  groundAtDepth,
  soilProperties,
  SOILS,
  undisturbedGround,
} from "winterground/soil/mod.ts";
import { clearSkyShare, dailySun } from "winterground/sun/mod.ts";

/** A made climate: a season of air temperature under a steady share of clear sky. */
interface MadeClimate {
  readonly latitude: number;
  readonly elevation: number;
  readonly mean: number;
  readonly swing: number;
  readonly clear: number;
  readonly dailySwing: number;
}

const CLIMATES: fc.Arbitrary<MadeClimate> = fc.record({
  latitude: fc.double({ min: 25, max: 72, noNaN: true }),
  elevation: fc.double({ min: 0, max: 3000, noNaN: true }),
  mean: fc.double({ min: -12, max: 22, noNaN: true }),
  swing: fc.double({ min: 3, max: 22, noNaN: true }),
  clear: fc.double({ min: 0.4, max: 0.9, noNaN: true }),
  dailySwing: fc.double({ min: 4, max: 18, noNaN: true }),
});

function weatherOf(climate: MadeClimate): DailyWeather {
  const { latitude, elevation, clear } = climate;
  const days = Array.from({ length: 365 }, (_, day) => day);
  const temperature = days.map((day) =>
    climate.mean - climate.swing * Math.cos(2 * Math.PI * (day - 20) / 365) +
    4 * Math.sin(day * 1.3) * Math.cos(day * 0.21)
  );
  return {
    place: { latitude, elevation },
    temperature,
    minTemperature: temperature.map((value) => value - climate.dailySwing / 2),
    radiation: days.map((day) =>
      clear * clearSkyShare(elevation) * dailySun(latitude, day + 1).radiation / 86400
    ),
  };
}

const loam = SOILS.find(({ texture }) => texture === "loam")!;
const layers = [{
  thickness: Infinity,
  properties: soilProperties({ ...loam, measuredConductivity: null }),
}];

function groundOf(climate: MadeClimate, snowDepth?: number) {
  const ground = undisturbedGround({
    weather: weatherOf(climate),
    layers,
    ...(snowDepth === undefined ? {} : { snowDepth }),
  });
  const series = groundAtDepth(ground, 1);
  const mean = series.reduce((sum, value) => sum + value, 0) / series.length;
  return { ground, mean, swing: annualHarmonic(series).amplitude };
}

Deno.test("the ground repeats, balances and stays near the air in climates from desert to tundra", () => {
  // Property: heat balance closed; mean at 1 m from 4 K below to 9 K above the air; swing below the air's
  fc.assert(
    fc.property(CLIMATES, (climate) => {
      const { ground, mean, swing } = groundOf(climate);
      const offset = mean - climate.mean;
      assert(ground.ledger.residual < 1e-6, `residual ${ground.ledger.residual}`);
      assert(offset > -4 && offset < 9, `offset ${offset}`);
      assert(swing < climate.swing + 1, `swing ${swing}`);
    }),
    { numRuns: 30, seed: 7 },
  );
});

Deno.test("warmer air warms the ground, deeper snow warms frozen ground", () => {
  // Property: order, in every climate tried; under a high sun the white of the snow cools more than
  // its warmth, so snow is asked of the north alone
  fc.assert(
    fc.property(CLIMATES, (climate) => {
      const warmer = { ...climate, mean: climate.mean + 2 };
      assert(groundOf(warmer, 0).mean > groundOf(climate, 0).mean);
      const cold = {
        ...climate,
        latitude: Math.max(45, climate.latitude),
        mean: Math.max(-2, Math.min(climate.mean, 4)),
        swing: 15,
      };
      assert(groundOf(cold, 0.3).mean > groundOf(cold, 0).mean);
    }),
    { numRuns: 8, seed: 11 },
  );
});
