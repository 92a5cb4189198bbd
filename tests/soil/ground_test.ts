// Property: limits, conservation and directions of the undisturbed ground and its surface
import { assert, assertAlmostEquals, assertLess, assertThrows } from "@std/assert";
import fc from "fast-check";
import { InputError, monthlyMeansOfDays } from "../../lib/basics/mod.ts";
import {
  ANNUAL_MESH,
  annualHarmonic,
  findSoil,
  fitWaveToGround,
  groundAtDepth,
  snowCover,
  snowCoverOfDepth,
  soilProperties,
  typicalSnowDepth,
  undisturbedGround,
} from "../../lib/soil/mod.ts";
import type { DailyWeather, GroundQuestion } from "../../lib/soil/mod.ts";
import { waveMisfit } from "../../lib/soil/ground_wave.ts";
import { snowConductivity } from "../../lib/soil/snow.ts";
import { evaporationHeat, longwaveLoss } from "../../lib/soil/surface.ts";

const LOAM = soilProperties({ ...findSoil("loam"), measuredConductivity: null });
const LAYERS = [{ thickness: Infinity, properties: LOAM }];
const day = (f: (day: number) => number) => Float64Array.from({ length: 365 }, (_, i) => f(i));
const season = (i: number) => Math.cos((2 * Math.PI * (i - 15)) / 365);

/** A made year of our own: mean and amplitude of the air, sun from 40 to 260 W/m². */
function madeWeather(mean: number, amplitude: number): DailyWeather {
  const temperature = day((i) => mean - amplitude * season(i) + 3 * Math.sin(1.7 * i));
  return {
    place: { latitude: 49.6, elevation: 560 },
    temperature,
    minTemperature: temperature.map((value) => value - 6),
    radiation: day((i) => 150 - 110 * season(i)),
  };
}
const cold = (extra: Partial<GroundQuestion> = {}) =>
  undisturbedGround({ weather: madeWeather(2.5, 18), layers: LAYERS, ...extra });
const mean = (series: ArrayLike<number>) => annualHarmonic(series).mean;

Deno.test("the year closes: heat balance to 1e-9, repeats within 0.005 K", () => {
  for (const texture of ["loam", "peat", "gravel", "clay"]) {
    const properties = soilProperties({ ...findSoil(texture), measuredConductivity: null });
    const ground = cold({ layers: [{ thickness: 9, properties }], snowDepth: 0.2 });
    assertLess(ground.ledger.residual, 1e-9);
    assertLess(ground.drift, 0.005);
    assertLess(ground.years, 40);
  }
});

Deno.test("half the cells' size and a third of the step move the ground by less than 0.1 K", () => {
  const plain = cold({ snowDepth: 0.2 });
  const mesh = { ...ANNUAL_MESH, firstCell: 0.02, growth: 1.04, largestCell: 0.25 };
  const fine = cold({ snowDepth: 0.2, mesh, stepsPerDay: 6 });
  for (const depth of [0.5, 1, 2]) {
    const [one, other] = [groundAtDepth(plain, depth), groundAtDepth(fine, depth)];
    assertLess(Math.abs(mean(one) - mean(other)), 0.1);
    assertLess(Math.abs(annualHarmonic(one).amplitude - annualHarmonic(other).amplitude), 0.1);
  }
  assertLess(Math.abs(plain.frostDepth - fine.frostDepth), 0.05);
});

Deno.test("more snow warms the ground and lifts the frost; latent heat holds frost up", () => {
  const depths = [0, 0.1, 0.3, 0.6].map((snowDepth) => cold({ snowDepth }));
  for (let i = 1; i < depths.length; i++) {
    assertLess(depths[i]!.frostDepth, depths[i - 1]!.frostDepth);
    assertLess(mean(groundAtDepth(depths[i - 1]!, 1)), mean(groundAtDepth(depths[i]!, 1)));
  }
  const dryFrost = { ...LOAM, latentHeat: 0 };
  const sensible = cold({ layers: [{ thickness: 9, properties: dryFrost }], snowDepth: 0 });
  assertLess(depths[0]!.frostDepth, sensible.frostDepth);
});

Deno.test("warm ground never freezes, its mean is the same at every depth", () => {
  const ground = undisturbedGround({ weather: madeWeather(22, 8), layers: LAYERS });
  assertAlmostEquals(ground.frostDepth, 0);
  const surface = mean(groundAtDepth(ground, 0.1));
  for (const depth of [1, 3, 8]) {
    assertAlmostEquals(mean(groundAtDepth(ground, depth)), surface, 0.02);
  }
});

Deno.test("without frost the column swings as the wave with the same diffusivity", () => {
  const ground = undisturbedGround({ weather: madeWeather(22, 8), layers: LAYERS });
  const wave = fitWaveToGround(ground, LOAM.diffusivity);
  const shallow = annualHarmonic(groundAtDepth(ground, 0.5));
  const deep = annualHarmonic(groundAtDepth(ground, 2.5));
  const expected = Math.exp(-2 / Math.sqrt(LOAM.diffusivity * 365 * 86400 / Math.PI));
  assertAlmostEquals(deep.amplitude / shallow.amplitude, expected, 0.01);
  assertAlmostEquals(wave.mean, shallow.mean, 0.05);
});

Deno.test("no wave with the same diffusivity fits the frozen ground better than the fitted one", () => {
  const ground = cold({ snowDepth: 0.2 });
  const wave = fitWaveToGround(ground, LOAM.diffusivity);
  const best = waveMisfit(ground, wave);
  for (const shift of [-0.3, 0.3]) {
    assertLess(best, waveMisfit(ground, { ...wave, mean: wave.mean + shift }));
    assertLess(best, waveMisfit(ground, { ...wave, amplitude: wave.amplitude + shift }));
    assertLess(best, waveMisfit(ground, { ...wave, minimumDay: wave.minimumDay + 5 * shift }));
  }
});

Deno.test("a constant climate without sun or evaporation gives its own equivalent temperature", () => {
  const flat = {
    place: { latitude: 50, elevation: 0 },
    temperature: day(() => 10),
    radiation: day(() => 0),
    vapourPressure: day(() => 1000),
    skyLongwave: day(() => 5.670374419e-8 * 283.15 ** 4),
  };
  const ground = undisturbedGround({ weather: flat, layers: LAYERS });
  for (const depth of [0.1, 1, 5]) {
    for (const value of groundAtDepth(ground, depth)) assertAlmostEquals(value, 10, 1e-6);
  }
});

Deno.test("snow: none above the melting air, water never negative, stated depth is met", () => {
  const temperature = day((i) => 2.5 - 18 * season(i));
  const rain = day(() => 1);
  const cover = snowCover(temperature, rain);
  assert(cover.water.every((water) => water >= 0));
  assertAlmostEquals(cover.depth[200]!, 0);
  for (const depth of [0.1, 0.3, 0.8]) {
    assertAlmostEquals(typicalSnowDepth(snowCoverOfDepth(temperature, rain, depth)), depth, 1e-3);
  }
  assertAlmostEquals(typicalSnowDepth(snowCoverOfDepth(temperature, rain, 0)), 0);
});

Deno.test("snow conducts between still air and ice, more when denser", () => {
  fc.assert(fc.property(fc.integer({ min: 100, max: 900 }), (density) => {
    const value = snowConductivity(density);
    assert(value > 0.024 && value < 2.3 && value < snowConductivity(density + 10));
  }));
});

Deno.test("evaporation lies between nothing and 1.13 of the equilibrium rate, falls in dry air", () => {
  const base = { net: 150, air: 20, wind: 3, pressure: 95000 };
  fc.assert(fc.property(fc.double({ min: 100, max: 2300, noNaN: true }), (vapour) => {
    const found = evaporationHeat({ ...base, vapour });
    assert(found > 0 && found < 1.13 * 150);
  }));
  const humid = evaporationHeat({ ...base, vapour: 2000 });
  const dry = evaporationHeat({ ...base, vapour: 400 });
  assertLess(dry, humid);
  assertAlmostEquals(evaporationHeat({ ...base, net: -10, vapour: 900 }), 0);
});

Deno.test("the sky takes more heat when it is clear and dry, none when it is as warm as the air", () => {
  const night = { air: -5, vapour: 350, clear: 0.9 };
  assertLess(longwaveLoss({ ...night, clear: 0.3 }), longwaveLoss(night));
  assertLess(longwaveLoss({ ...night, vapour: 400 }), longwaveLoss({ ...night, vapour: 100 }));
  const black = 5.670374419e-8 * 268.15 ** 4;
  assertAlmostEquals(longwaveLoss({ ...night, sky: black }), 0, 1e-9);
});

Deno.test("months of a leap year keep their days", () => {
  const daily = Float64Array.from({ length: 366 }, (_, i) => i < 31 ? 1 : i < 60 ? 2 : 3);
  const months = monthlyMeansOfDays(daily);
  assertAlmostEquals(months[0]!, 1);
  assertAlmostEquals(months[1]!, 2);
  assertAlmostEquals(months[2]!, 3);
});

Deno.test("half a year, a gap and unequal series are refused with their name", () => {
  const weather = madeWeather(5, 10);
  const ask = (changed: Partial<DailyWeather>) => () =>
    undisturbedGround({ weather: { ...weather, ...changed }, layers: LAYERS });
  assertThrows(ask({ temperature: [1, 2, 3] }), InputError, "365 or 366");
  assertThrows(ask({ radiation: [1] }), InputError, "radiation");
  const gap = day((i) => i === 40 ? NaN : 5);
  assertThrows(ask({ minTemperature: gap }), InputError, "day 41");
  assertThrows(() => cold({ stepsPerDay: 0.5 }), InputError, "whole number");
});
