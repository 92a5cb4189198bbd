import { assert, assertAlmostEquals, assertEquals } from "@std/assert";
import {
  listedLayerAt,
  saturatedSoil,
  soilChapter,
  type SoilInputs,
  soilProperties,
  studyLayers,
} from "winterground/soil/mod.ts";
import { sampleYear } from "../climate/sample.ts";
import { DEFAULTS } from "../harness/defaults.ts";

const LOAM: SoilInputs = {
  ...DEFAULTS.soil,
  texture: "loam",
  dryDensity: 1450,
  moisture: 0.25,
  quartz: 0.4,
  measuredConductivity: null,
  waterTableDepth: 3,
  snowDepth: 0.3,
};
const PEAT = {
  texture: "peat",
  dryDensity: 250,
  moisture: 0.6,
  quartz: 0,
  measuredConductivity: null,
} as const;
const { snowDepth: _snow, waterTableDepth: _water, ...SAME } = LOAM;

Deno.test("layers stand above the section's soil, wet below the water table wherever it lies", () => {
  // Property: thickness adds up; each soil is dry above and saturated below the water
  const layers = [{ ...PEAT, thickness: 0.5 }, { ...SAME, thickness: 0.7 }];
  const thickness = (inputs: SoilInputs) => studyLayers(inputs).map((layer) => layer.thickness);
  assertEquals(thickness({ ...LOAM, layers }).map((one) => Number(one.toFixed(9))), [
    0.5,
    0.7,
    1.8,
    Infinity,
  ]);
  const high = studyLayers({ ...LOAM, layers, waterTableDepth: 0.2 });
  assertEquals(high.map(({ properties }) => properties), [
    soilProperties(PEAT),
    saturatedSoil(PEAT),
    saturatedSoil(SAME),
    saturatedSoil(LOAM),
  ]);
  assertAlmostEquals(high[1]!.thickness, 0.3, 1e-9);
  assertEquals(thickness({ ...LOAM, layers, waterTableDepth: null }), [0.5, 0.7, Infinity]);
  assertEquals(studyLayers({ ...LOAM, waterTableDepth: 0 }).map((one) => one.properties), [
    saturatedSoil(LOAM),
  ]);
  assertEquals(listedLayerAt({ ...LOAM, layers }, 0.6)?.texture, "loam");
  assertEquals(listedLayerAt({ ...LOAM, layers }, 1.3), null);
});

Deno.test("a layer of the section's own soil changes nothing, a peat top keeps frost out", () => {
  // Property: limit; peat conducts a third as well
  const climate = sampleYear();
  const plain = soilChapter(LOAM, climate, 0.9);
  const same = soilChapter({ ...LOAM, layers: [{ ...SAME, thickness: 0.4 }] }, climate, 0.9);
  assertEquals(same.monthly, plain.monthly);
  assertEquals(same.sensitivity, plain.sensitivity);
  const peat = soilChapter({ ...LOAM, layers: [{ ...PEAT, thickness: 0.4 }] }, climate, 0.9);
  assert(peat.frostDepth < plain.frostDepth);
  const swing = (result: typeof plain) =>
    result.temperatureAtTubeDepthMax - result.temperatureAtTubeDepthMin;
  assert(swing(peat) < swing(plain));
  assertEquals(peat.properties, plain.properties);
  const told = (result: typeof plain) => result.notices.map(({ text }) => text).join("\n");
  assert(told(peat).includes("The layers listed are used in this chapter's undisturbed ground"));
  assert(!told(peat).includes("lie in a listed layer"));
  assert(!told(plain).includes("layers listed"));
  const deep = soilChapter({ ...LOAM, layers: [{ ...PEAT, thickness: 1.4 }] }, climate, 0.9);
  assert(told(deep).includes("lie in a listed layer of peat"));
});
