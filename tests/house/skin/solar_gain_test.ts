import { assert, assertAlmostEquals, assertEquals } from "@std/assert";
import {
  beamLanding,
  diffuseEnds,
  endedLight,
  findCrop,
  findGlazing,
  glazingOptics,
  houseGeometry,
  type HouseInputs,
  houseModel,
  type LightEnds,
  lightSurfaces,
  planeSeries,
  solarGain,
  sunDirection,
  viewFactors,
} from "../../../lib/house/mod.ts";
import { glazingShares, hourlySun } from "../../../lib/sun/mod.ts";
import { HOUSE, simpleYear } from "../fixtures.ts";

/** Clear days: beam from the sun's height alone, a little diffuse. */
function clearYear() {
  const year = simpleYear({ temperature: () => 0 });
  const sun = hourlySun(year.place);
  const directNormal = sun.elevation.map((up) => up > 3 ? 800 * (1 - Math.exp(-up / 10)) : 0);
  const diffuseHorizontal = sun.elevation.map((up) => up > 0 ? 60 : 0);
  const globalHorizontal = directNormal.map((beam, hour) =>
    beam * sun.cosZenith[hour]! + diffuseHorizontal[hour]!
  );
  return { ...year, directNormal, diffuseHorizontal, globalHorizontal };
}

const clear = clearYear();
const open = { ...HOUSE, curtain: null };
const sum = (series: Float64Array, from = 0, to = 8760) =>
  series.slice(from, to).reduce((total, value) => total + value, 0);

const inside = (inputs: typeof open | typeof HOUSE, from?: number, to?: number) => {
  const model = houseModel(inputs, clear);
  return sum(model.solarFloor, from, to) + sum(model.solarCrop, from, to) +
    sum(model.solarMass, from, to) + sum(model.solarAir, from, to);
};

Deno.test("solar inside is part of solar outside, every hour, and none at night", () => {
  // Property: conservation
  const model = houseModel(open, clear);
  for (let hour = 0; hour < 8760; hour++) {
    const kept = model.solarFloor[hour]! + model.solarCrop[hour]! + model.solarMass[hour]! +
      model.solarAir[hour]!;
    assert(kept >= 0 && kept <= 0.85 * model.solarOutside[hour]! + 1e-9, `hour ${hour}: ${kept}`);
    if (clear.globalHorizontal[hour] === 0) assertAlmostEquals(kept, 0, 1e-9);
  }
});

Deno.test("a south-facing house gets more winter sun than one that faces north", () => {
  // Property: orientation; January and December at 49.6° N
  assert(inside(open, 0, 744) > 1.5 * inside({ ...open, facing: 0 }, 0, 744));
});

Deno.test("a house with everything glazed is symmetric: facing north or south is the same", () => {
  // Property: symmetry of a gable with all planes glazed
  const glazed = { ...open, northWall: "glazed", northRoof: "glazed" } as const;
  const south = inside(glazed as unknown as typeof open);
  const north = inside({ ...glazed, facing: 0 } as unknown as typeof open);
  // within the spots of the view factors
  assertAlmostEquals(south, north, 1e-5 * south);
});

Deno.test("low winter sun that crosses a glazed house leaves through the far side", () => {
  // Property: glazing the north adds outside area but less than proportional light inside in winter
  const glazed = { ...open, northWall: "glazed", northRoof: "glazed" } as unknown as typeof open;
  assert(inside(glazed, 0, 744) < 1.1 * inside(open, 0, 744));
});

Deno.test("a closed curtain shades what it covers", () => {
  // Property: closed below 100 W/m² in the cold, the curtain costs a little light
  const curtain = { ...HOUSE.curtain!, closeBelow: 100, closeBelowOutside: 5 };
  const shaded = inside({ ...HOUSE, curtain });
  const free = inside(open);
  assert(shaded < 0.999 * free && shaded > 0.9 * free, `${shaded} ${free}`);
});

function gainOf(inputs: HouseInputs, climate = clear) {
  const sun = hourlySun(climate.place);
  return solarGain({
    inputs,
    geometry: houseGeometry(inputs),
    glazing: findGlazing(inputs.glazing),
    crop: findCrop(inputs.crop),
    leafArea: new Float64Array(8760).fill(1.5),
    sun,
    series: planeSeries(climate, sun),
  });
}

Deno.test("light let in is what the house takes up and what goes out again, every hour", () => {
  // Property: conservation to rounding, any shape, with and without barrels, default and override
  const houses: HouseInputs[] = [
    open,
    { ...open, shape: "hoop", northRoof: "glazed", northWall: "glazed", waterVolume: 0 },
    { ...open, shape: "lean-to", endWalls: 0.4, facing: 150, waterSurface: 400 },
    { ...open, lightToAir: 0.1 },
    { ...open, lightToAir: 1, wallAbsorptance: 0 },
  ];
  for (const inputs of houses) {
    const gain = gainOf(inputs);
    for (let hour = 0; hour < 8760; hour++) {
      const kept = gain.floor[hour]! + gain.crop[hour]! + gain.mass[hour]! + gain.air[hour]!;
      const gone = gain.out[hour]! + gain.throughSolid[hour]!;
      assertAlmostEquals(kept + gone, gain.letIn[hour]!, 1e-12 * (1 + gain.letIn[hour]!));
      assert(gain.rising[hour]! >= 0 && gain.rising[hour]! <= gain.air[hour]!);
    }
  }
});

Deno.test("diffuseEnds() is the sum of all the ways that light is thrown back", () => {
  // Property: the same light followed bounce by bounce
  const row = findGlazing(open.glazing);
  const surfaces = lightSurfaces(houseGeometry(open), glazingOptics(row), row.lightFactor, 0.6);
  const factors = viewFactors(surfaces);
  const ends = diffuseEnds(surfaces);
  surfaces.forEach((_, from) => {
    let light = surfaces.map((_, i): number => i === from ? 1 : 0);
    const sums: Record<keyof LightEnds, number> = {
      floor: 0,
      backWall: 0,
      otherSolid: 0,
      rising: 0,
      glazing: 0,
      throughSolid: 0,
    };
    for (let bounce = 0; bounce < 200; bounce++) {
      const fallen = surfaces.map((_, to) =>
        light.reduce((sum, sent, i) => sum + sent * factors[i]![to]!, 0)
      );
      for (const key of Object.keys(sums) as (keyof LightEnds)[]) {
        fallen.forEach((on, i) => sums[key] += on * surfaces[i]!.atOnce[key]);
      }
      light = fallen.map((on, i) => on * (1 - endedLight(surfaces[i]!.atOnce)));
    }
    for (const key of Object.keys(sums) as (keyof LightEnds)[]) {
      assertAlmostEquals(ends[from]![key], sums[key], 1e-12, key);
    }
    assertAlmostEquals(endedLight(ends[from]!), 1, 1e-12);
  });
});

Deno.test("the north wall takes its light in winter, the floor in summer", () => {
  // Property: direction; noon of 21 December and of 21 June at 49.6° N
  const gain = gainOf({ ...open, waterVolume: 0 });
  const share = (hour: number) =>
    gain.air[hour]! / (gain.air[hour]! + gain.floor[hour]! + gain.crop[hour]!);
  const [winter, summer] = [share(354 * 24 + 12), share(171 * 24 + 12)];
  assert(winter > 0.4 && summer < 0.2, `${winter} ${summer}`);
});

Deno.test("white walls throw light on the floor and out; a fixed share to the air overrides", () => {
  // Property: direction, and the key's own meaning
  const total = (inputs: HouseInputs) => {
    const gain = gainOf(inputs);
    const [floor, air, out] = [sum(gain.floor) + sum(gain.crop), sum(gain.air), sum(gain.out)];
    return { floor, air, out, kept: floor + air + sum(gain.mass) };
  };
  const dry = { ...open, waterVolume: 0 };
  const [white, dark] = [0.2, 0.9].map((wallAbsorptance) => total({ ...dry, wallAbsorptance }));
  assert(white!.floor > dark!.floor && white!.out > dark!.out && white!.air < dark!.air);
  const fixed = total({ ...dry, lightToAir: 0.1 });
  assertAlmostEquals(fixed.air, 0.1 * fixed.kept, 1e-9 * fixed.kept);
  assertAlmostEquals(fixed.kept, total(dry).kept, 1e-9 * fixed.kept);
});

Deno.test("barrels before the back wall take its light by their share of it", () => {
  // Property: 20 m² of barrels, half of them in the sun, before a back wall of 48 m²; the floor's light
  // stays
  const [with20, none] = [gainOf(open), gainOf({ ...open, waterVolume: 0 })];
  const noon = 14 * 24 + 12;
  assertAlmostEquals(with20.floor[noon]!, none.floor[noon]!, 1e-9 * none.floor[noon]!);
  const taken = none.air[noon]! - with20.air[noon]!;
  assertAlmostEquals(with20.mass[noon]!, taken, 1e-9 * taken);
  const twice = gainOf({ ...open, waterSurface: 40 });
  assertAlmostEquals(twice.mass[noon]!, 2 * taken, 1e-9 * taken);
});

Deno.test("summer shade keeps its share out in the warm months and nothing in the cold ones", () => {
  // Property: light times share, by the mean of the past 30 days.
  const climate = simpleYear({
    temperature: (hour) => 5 - 20 * Math.cos(2 * Math.PI * hour / 8760),
    sun: 0.5,
  });
  const open = houseModel(HOUSE, climate);
  const shaded = houseModel({ ...HOUSE, summerShade: 0.4, summerShadeAbove: 12 }, climate);
  const noon = (day: number) => day * 24 + 12;
  for (const part of ["solarFloor", "solarCrop", "solarMass", "solarAir"] as const) {
    assertEquals(shaded[part][noon(20)], open[part][noon(20)]);
    assertAlmostEquals(shaded[part][noon(200)]!, 0.6 * open[part][noon(200)]!, 1e-9);
  }
  // 12 degC lies between the means of the 30 days before 1 May (9.6) and 1 June (18.8)
  assertEquals(shaded.solarFloor[noon(120)], open.solarFloor[noon(120)]);
  assert(shaded.solarFloor[noon(151)]! < open.solarFloor[noon(151)]!);
});

Deno.test("of a winter noon's beam, what meets the glazed north side from within is lost", () => {
  // Property: geometry by hand, sun square to the house, beam alone. A ray that passes the front at
  // height c meets the floor below W·tan e, the back wall up to 2 m more, the back roof above that.
  const hour = 14 * 24 + 12;
  const glazed = {
    ...open,
    endWalls: 0.3,
    kneeWallHeight: 0,
    kneeWall: 0.3,
    northWall: "glazed",
    northRoof: "glazed",
    wallAbsorptance: 1,
  } as HouseInputs;
  const sun = hourlySun(clear.place);
  const [up, round] = [sun.elevation[hour]!, sun.azimuth[hour]!];
  const facing = round;
  const geometry = houseGeometry({ ...glazed, facing });
  const names = [...geometry.parts.map(({ name }) => name), "floor"];
  const row = findGlazing(glazed.glazing);
  const optics = glazingOptics(row);
  const surfaces = lightSurfaces(geometry, optics, row.lightFactor, 1);
  const landing = beamLanding(surfaces)(sunDirection(up, round, facing));
  const drop = 8 * Math.tan(up * Math.PI / 180);
  const top = 4 + drop / 2;
  const front = landing.get(names.indexOf("front roof"))!;
  const all = top - 2;
  const [floor, wall] = [Math.max(0, drop - 2), Math.min(drop + 2, top) - Math.max(2, drop)];
  assertAlmostEquals(front[names.indexOf("floor")]!, floor / all, 1e-9);
  assertAlmostEquals(front[names.indexOf("back wall")]!, wall / all, 1e-9);
  assertAlmostEquals(front[names.indexOf("back roof")]!, Math.max(0, top - drop - 2) / all, 1e-9);
  // what a pane takes from within: all but what it reflects, bars and dirt apart
  const gone = (cosine: number) =>
    row.lightFactor * (1 - glazingShares(optics, Math.acos(cosine) * 180 / Math.PI).reflected);
  const [high, tilt] = [up * Math.PI / 180, Math.atan2(2, 4)];
  const straight = wall / all * gone(Math.cos(high)) +
    Math.max(0, top - drop - 2) / all * gone(Math.cos(high + tilt - Math.PI / 2));
  assert(straight > 0.2 && straight < 0.8, `a low sun loses much: ${straight}`);
  // the whole house loses at least what goes straight out, and no more than light thrown back adds
  const beamOnly = {
    ...clear,
    diffuseHorizontal: new Float64Array(8760),
    albedo: new Float64Array(8760),
  };
  const gain = gainOf({ ...glazed, facing }, beamOnly);
  const solid = gainOf({ ...glazed, facing, northWall: 0.3, northRoof: 0.3 }, beamOnly);
  assert(gain.out[hour]! > 0.3 * straight * gain.letIn[hour]!);
  assert(gain.out[hour]! > 2 * solid.out[hour]!);
});
