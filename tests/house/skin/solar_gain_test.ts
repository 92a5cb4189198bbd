import { assert, assertAlmostEquals, assertEquals } from "@std/assert";
import { findGlazing, houseGeometry, houseModel, roomAbsorptance } from "../../../lib/house/mod.ts";
import { beamTransmittance, diffuseTransmittance, hourlySun } from "../../../lib/sun/mod.ts";
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
  assertAlmostEquals(south, north, 1e-6 * south);
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

Deno.test("roomAbsorptance() is 1 without glazing to lose light through, and falls with its area", () => {
  // Property: limits of Duffie & Beckman 2013 [duffie-beckman-2013] §5.11
  assertAlmostEquals(roomAbsorptance(0, 100, 0.7), 1, 1e-12);
  assert(roomAbsorptance(200, 100, 0.7) < roomAbsorptance(50, 100, 0.7));
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
  // Property: the beam that fills the house in front fills the same outline behind; the part of it on
  // glazing, times its transmittance, goes. A north side of insulated wall loses none of it.
  const hour = 14 * 24 + 12;
  const sun = hourlySun(clear.place);
  const beamOnly = { ...clear, diffuseHorizontal: new Float64Array(8760) };
  const solid = { ...open, endWalls: 0.3, kneeWallHeight: 0, kneeWall: 0.3 };
  const glazed = { ...solid, northWall: "glazed", northRoof: "glazed" } as const;
  const light = (inputs: typeof solid) => {
    const model = houseModel(inputs, {
      ...beamOnly,
      albedo: new Float64Array(8760),
    });
    return model.solarFloor[hour]! + model.solarCrop[hour]! + model.solarMass[hour]! +
      model.solarAir[hour]!;
  };
  const row = findGlazing(open.glazing);
  const optics = {
    refractiveIndex: row.refractiveIndex,
    extinction: row.extinction,
    thickness: row.sheetThickness,
    sheets: row.sheets,
  };
  const degree = Math.PI / 180;
  const [up, round] = [sun.elevation[hour]! * degree, sun.azimuth[hour]! * degree];
  let [outline, gone] = [192 * Math.sin(up), 0];
  let [glass, solidArea] = [0, 192];
  const parts = houseGeometry(glazed as unknown as typeof solid).parts;
  for (const part of parts) {
    if (part.kind === "glazed") glass += part.area;
    else solidArea += part.area;
    const [tilt, turn] = [part.plane.tilt * degree, part.plane.azimuth * degree];
    const cosine = Math.sin(up) * Math.cos(tilt) +
      Math.cos(up) * Math.sin(tilt) * Math.cos(round - turn);
    if (cosine >= 0) continue;
    outline -= part.area * cosine;
    if (part.kind === "glazed") {
      gone -= part.area * cosine * beamTransmittance(optics, Math.acos(-cosine) / degree);
    }
  }
  const lost = gone / outline;
  assert(lost > 0.25 && lost < 0.7, `a low sun loses much: ${lost}`);
  const through = diffuseTransmittance(optics);
  // the back roof and wall of 24 m by √20 m and 2 m are solid in one house, glazed in the other
  const back = 24 * (Math.sqrt(20) + 2);
  const kept = roomAbsorptance(glass, solidArea, through) /
    roomAbsorptance(glass - back, solidArea + back, through);
  const ratio = light(glazed as unknown as typeof solid) / light(solid);
  assertAlmostEquals(ratio, kept * (1 - lost), 0.005);
});

Deno.test("under an overcast sky the light inside is transmittance, light factor and absorptance in a row", () => {
  // Property: product of three shares, diffuse light alone; the factor of the glazing's row is not 1
  const overcast = {
    ...clear,
    directNormal: new Float64Array(8760),
    globalHorizontal: clear.diffuseHorizontal,
  };
  const model = houseModel(open, overcast);
  const row = findGlazing(open.glazing);
  const optics = {
    refractiveIndex: row.refractiveIndex,
    extinction: row.extinction,
    thickness: row.sheetThickness,
    sheets: row.sheets,
  };
  const { parts } = houseGeometry(open);
  const area = (kind: string) =>
    parts.reduce((total, part) => total + (part.kind === kind ? part.area : 0), 0);
  const glass = area("glazed");
  const all = parts.reduce((total, part) => total + part.area, 0);
  const through = diffuseTransmittance(optics);
  const wanted = through * row.lightFactor * roomAbsorptance(glass, all - glass + 192, through);
  assert(row.lightFactor < 0.99, "the row exercises the factor");
  const hour = 172 * 24 + 12;
  const inside = model.solarFloor[hour]! + model.solarCrop[hour]! + model.solarMass[hour]! +
    model.solarAir[hour]!;
  assertAlmostEquals(inside / model.solarOutside[hour]!, wanted, 1e-9);
});
