import { assert, assertAlmostEquals, assertEquals } from "@std/assert";
import {
  findSoil,
  frostDays,
  penetration,
  plausibleGround,
  type SoilInputs,
  soilLayerRows,
  soilProperties,
  twoEstimates,
} from "winterground/soil/mod.ts";
import * as sample from "../show/sample.ts";
import { DEFAULTS } from "../harness/defaults.ts";

Deno.test("frostDays() finds both ends of the frozen ground between the depths of the map", () => {
  // Property: straight profiles with known crossings; thawed from above; all thawed
  const profile = (values: readonly number[]) => ({
    depths: [0, 1, 2],
    temperature: values.map((value) => Float64Array.of(value)),
  });
  const [frozen] = frostDays(profile([-3, -1, 3]));
  assertEquals([frozen!.top, frozen!.bottom, frozen!.frozen], [0, 1.25, true]);
  const [thawing] = frostDays(profile([2, -2, 2]));
  assertEquals([thawing!.top, thawing!.bottom], [0.5, 1.5]);
  const [thawed] = frostDays(profile([2, 1, 3]));
  assertEquals([thawed!.top, thawed!.bottom, thawed!.frozen], [0, 0, false]);
});

Deno.test("twoEstimates() meets the table of the chapter at a depth of the table", () => {
  // Property: no interpolation error at a node
  const tubeDepth = sample.soilResult.depths[2]!;
  const rows = twoEstimates({ ...sample.soilResult, tubeDepth });
  for (const row of rows) {
    const found = sample.soilResult.monthly[row.month]![2]!;
    assert(Math.abs(row.column - found) < 1e-12);
    assert(Math.abs(row.difference - (row.column - row.wave)) < 1e-12);
  }
});

Deno.test("penetration() grows with the square root of the period", () => {
  // Property: √(a·P/π); e⁻³ lies three times as deep as 1/e
  const [day, spell, year] = penetration(5e-7);
  assertAlmostEquals(day!.depth, Math.sqrt(5e-7 * 86400 / Math.PI), 1e-12);
  assertAlmostEquals(spell!.depth / day!.depth, Math.sqrt(10), 1e-9);
  assertAlmostEquals(year!.depth / day!.depth, Math.sqrt(365), 1e-9);
  for (const row of [day!, spell!, year!]) {
    assertAlmostEquals(Math.exp(-row.depthOfTwentieth / row.depth), Math.exp(-3), 1e-12);
  }
});

Deno.test("soilLayerRows() ends each layer where the next begins, the last without end", () => {
  // Property: depths add up; properties are those of each soil
  const loam: SoilInputs = {
    ...DEFAULTS.soil,
    ...findSoil("loam"),
    measuredConductivity: 1.1,
    waterTableDepth: null,
    snowDepth: 0,
  };
  const peat = { ...findSoil("peat"), thickness: 0.4, measuredConductivity: null };
  const rows = soilLayerRows({ ...loam, layers: [peat, { ...peat, thickness: 0.2 }] });
  assertEquals(rows.map(({ top }) => Math.round(10 * top)), [0, 4, 6]);
  assertEquals(rows.at(-1)!.bottom, Infinity);
  assertEquals(rows.map(({ measured }) => measured), [false, false, true]);
  assertEquals(rows[0]!.conductivity, soilProperties(peat).conductivity);
  assertEquals(rows[2]!.conductivity, 1.1);
});

Deno.test("plausibleGround() keeps the cleared ground out of the range of the soils", () => {
  // Property: hand-made rows
  const row = (minAtTubeDepth: number, frostDepth: number, cleared?: true) => ({
    change: "",
    conductivity: 1,
    moisture: 0.2,
    frostDepth,
    meanAtTubeDepth: 5,
    minAtTubeDepth,
    maxAtTubeDepth: 12 + minAtTubeDepth,
    ...cleared ? { cleared } : {},
  });
  const { soils, all, cleared } = plausibleGround([row(-1, 1), row(1, 0.8), row(-4, 1.6, true)]);
  assertEquals([soils.lowest, soils.highest, soils.frostDepth], [[-1, 1], [11, 13], [0.8, 1]]);
  assertEquals([all.lowest, all.frostDepth], [[-4, 1], [0.8, 1.6]]);
  assertEquals(cleared?.minAtTubeDepth, -4);
  assertEquals(plausibleGround([row(-1, 1)]).cleared, null);
});
