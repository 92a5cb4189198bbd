// Property: the soil chapter's result hangs together, and its notices come when they should
import { assert, assertAlmostEquals, assertEquals, assertLess, assertThrows } from "@std/assert";
import { OutOfRangeError } from "../../lib/basics/mod.ts";
import type { ClimateYear } from "../../lib/climate/types.ts";
import { findSoil, fitWave, soilChapter, undisturbedTemperature } from "../../lib/soil/mod.ts";
import type { SoilInputs } from "../../lib/soil/mod.ts";
import { DEFAULTS } from "../harness/defaults.ts";

const hourly = (f: (hour: number) => number) => Float64Array.from({ length: 8760 }, (_, i) => f(i));
const season = (hour: number) => Math.cos((2 * Math.PI * (hour / 24 - 15)) / 365);
const daytime = (hour: number) => Math.max(0, -Math.cos((2 * Math.PI * (hour % 24)) / 24));

/** A made year: mean and yearly amplitude of the air. */
function madeClimate(mean: number, amplitude: number): ClimateYear {
  return {
    place: { name: "made", latitude: 49.6, longitude: -101.3, elevation: 560, timeZone: -6 },
    source: "made for the test",
    layout: "normals",
    dryBulb: hourly((hour) => mean - amplitude * season(hour) + 5 * (daytime(hour) - 0.3)),
    relativeHumidity: hourly(() => 0.7),
    globalHorizontal: hourly((hour) => daytime(hour) * (470 - 340 * season(hour))),
    directNormal: hourly(() => 0),
    diffuseHorizontal: hourly(() => 0),
    windSpeed: hourly(() => 4),
    pressure: hourly(() => 94800),
    skyLongwave: null,
    notices: [],
  };
}

const INPUTS: SoilInputs = {
  ...DEFAULTS.soil,
  ...findSoil("loam"),
  measuredConductivity: null,
  waterTableDepth: 6,
  snowDepth: 0.25,
};
const COLD = madeClimate(2.5, 18);
const result = soilChapter(INPUTS, COLD, 1);
const said = (found: { notices: readonly { text: string }[] }, word: string) =>
  found.notices.some((notice) => notice.text.includes(word));

Deno.test("monthly tables, map and tube depth come from one ground", () => {
  assertEquals(result.monthly.length, 12);
  assert(result.monthly.every((month) => month.length === result.depths.length));
  const column = result.depths.indexOf(1);
  for (const month of result.monthly) {
    assert(month[column]! >= result.temperatureAtTubeDepthMin);
    assert(month[column]! <= result.temperatureAtTubeDepthMax);
  }
  const atTubes = result.field.temperature[result.field.depths.findIndex((depth) => depth === 1)]!;
  assertAlmostEquals(Math.min(...atTubes), result.temperatureAtTubeDepthMin, 1e-9);
  assertLess(result.balanceResidual, 1e-9);
});

Deno.test("frost in the table reaches as deep as the frost depth says", () => {
  assertLess(0.2, result.frostDepth);
  const frozen = result.field.depths.filter((_, i) =>
    Math.min(...result.field.temperature[i]!) < -1e-3
  );
  assertLess(Math.abs(Math.max(...frozen) - result.frostDepth), 0.2 + 1e-9);
});

Deno.test("the wave handed on has the column's mean and lies near it at depth; the climate wave is the air's own", () => {
  for (const depth of [3, 4, 5]) {
    const column = result.depths.indexOf(depth);
    const months = result.monthly.map((month) => month[column]!);
    const wave = months.map((_, month) =>
      undisturbedTemperature(result.wave, depth, 30.4 * month + 15)
    );
    const mean = (values: number[]) => values.reduce((sum, value) => sum + value / 12, 0);
    assertAlmostEquals(mean(wave), mean(months), 0.15);
    assertLess(Math.max(...months.map((value, i) => Math.abs(value - wave[i]!))), 1.5);
  }
  assertEquals(result.climateWave, fitWave(COLD, result.properties, INPUTS.snowDepth));
  assertAlmostEquals(
    result.difference.mean,
    result.monthly.reduce(
      (sum, month, i) =>
        sum +
        month[result.depths.indexOf(1)]! * [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31][i]! /
          365,
      0,
    ) - result.climateWave.mean,
    1e-6,
  );
});

Deno.test("climate wave: warm places keep the air's mean and amplitude, snow warms cold ones", () => {
  const warm = madeClimate(25, 8);
  const wave = fitWave(warm, result.properties, 0.5);
  const mean = warm.dryBulb.reduce((sum, value) => sum + value, 0) / 8760;
  assertAlmostEquals(wave.mean, mean, 1e-9);
  assertAlmostEquals(wave.amplitude, 8, 1e-3);
  assertAlmostEquals(wave.minimumDay, 15, 0.05);
  const bare = fitWave(COLD, result.properties, 0);
  const snow = fitWave(COLD, result.properties, 0.3);
  assertLess(bare.mean + 1, snow.mean);
  assertLess(snow.amplitude, bare.amplitude);
});

Deno.test("sensitivity: first row as given, cleared ground freezes deepest", () => {
  const [given, ...changed] = result.sensitivity;
  assertAlmostEquals(given!.frostDepth, result.frostDepth);
  assertAlmostEquals(given!.minAtTubeDepth, result.temperatureAtTubeDepthMin);
  const bare = changed.at(-1)!;
  for (const row of result.sensitivity) assert(row.frostDepth <= bare.frostDepth);
  assertEquals(changed.length, 5);
});

Deno.test("notices: water table, peat, gravel, pit caution, measured conductivity", () => {
  assert(said(result, "test pit") && said(result, "local building code"));
  assert(!said(result, "Water table"));
  const high = soilChapter({ ...INPUTS, waterTableDepth: 1.5 }, COLD, 1);
  assert(said(high, "less than 1 m below the tubes") && said(high, "moving groundwater carries"));
  assert(said(soilChapter({ ...INPUTS, waterTableDepth: 0.5 }, COLD, 1), "at or above the tubes"));
  assert(said(soilChapter({ ...INPUTS, waterTableDepth: null }, COLD, 1), "not known"));
  const peat = { ...INPUTS, ...findSoil("peat") };
  assert(said(soilChapter(peat, COLD, 1), "Peat"));
  const gravel = { ...INPUTS, ...findSoil("gravel"), measuredConductivity: 1.8 };
  const found = soilChapter(gravel, COLD, 1);
  assert(said(found, "through gravel") && !said(found, "is estimated"));
  assertAlmostEquals(found.properties.conductivity, 1.8);
});

Deno.test("snow the year is too warm for is told; absurd depths are refused", () => {
  const warm = soilChapter(INPUTS, madeClimate(22, 6), 1);
  assert(said(warm, "too warm to keep"));
  assert(!said(result, "too warm to keep"));
  assertThrows(() => soilChapter({ ...INPUTS, snowDepth: -1 }, COLD, 1), OutOfRangeError);
  assertThrows(() => soilChapter(INPUTS, COLD, 40), OutOfRangeError);
});

Deno.test("ground that stays frozen is said so, and its result is plain numbers", () => {
  const frozen = soilChapter(INPUTS, madeClimate(-9, 16), 1);
  assert(said(frozen, "stays frozen"));
  assertEquals(frozen.difference.waveFrostDepth, null);
  assert(Number.isFinite(frozen.frostDepth) && Number.isFinite(frozen.wave.amplitude));
});
