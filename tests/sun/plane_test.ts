import { assert, assertAlmostEquals } from "@std/assert";
import { hourlySun, planeRadiation, planeTotal, type SkyModel } from "winterground/sun/mod.ts";

const PLACE = { latitude: 49.6, longitude: -101.3, timeZone: -6 };
const SUN = hourlySun(PLACE);

/** A year that closes: direct 600 W/m² while the sun is up, diffuse a tenth of the light outside. */
function clearYear() {
  const directNormal = SUN.upShare.map((share) => 600 * share);
  const diffuseHorizontal = SUN.cosZenith.map((cosine) => 130 * cosine);
  const globalHorizontal = SUN.cosZenith.map((cosine, hour) =>
    600 * cosine + diffuseHorizontal[hour]!
  );
  return { directNormal, diffuseHorizontal, globalHorizontal };
}

const CLIMATE = clearYear();
const sum = (values: Float64Array) => values.reduce((total, value) => total + value, 0);

Deno.test("a level plane gets the global radiation of the horizontal, whatever the sky model", () => {
  // Property: tilt 0 changes nothing
  for (const model of ["isotropic", "hay-davies"] satisfies SkyModel[]) {
    const level = planeRadiation({
      climate: CLIMATE,
      sun: SUN,
      plane: { tilt: 0, azimuth: 180 },
      model,
    });
    CLIMATE.globalHorizontal.forEach((global, hour) => {
      const cosine = SUN.upShare[hour]! > 0 ? SUN.cosZenith[hour]! / SUN.upShare[hour]! : 1;
      if (cosine < 0.01745) return; // the beam ratio is capped at 89°
      assertAlmostEquals(level.beam[hour]! + level.skyDiffuse[hour]!, global, 1e-6);
    });
    assertAlmostEquals(sum(level.groundReflected), 0, 1e-6);
  }
});

Deno.test("a plane that faces down sees ground alone", () => {
  // Property: tilt 180 gets the albedo times the global radiation and no sky
  const down = planeRadiation({
    climate: CLIMATE,
    sun: SUN,
    plane: { tilt: 180, azimuth: 180 },
    albedo: 0.3,
    model: "isotropic",
  });
  assertAlmostEquals(sum(down.beam) + sum(down.skyDiffuse), 0, 1e-6);
  assertAlmostEquals(sum(down.groundReflected), 0.3 * sum(CLIMATE.globalHorizontal), 1e-3);
});

Deno.test("planeTotal() of a plane and of the one that faces the other way is the light of all directions", () => {
  // Closed form: under an even sky two opposite walls see all of it and all of the ground once
  const walls = [0, 180].map((azimuth) =>
    planeTotal(planeRadiation({
      climate: { ...CLIMATE, directNormal: CLIMATE.directNormal.map(() => 0) },
      sun: SUN,
      plane: { tilt: 90, azimuth },
      albedo: 0.3,
      model: "isotropic",
    }))
  );
  const both = sum(CLIMATE.diffuseHorizontal) + 0.3 * sum(CLIMATE.globalHorizontal);
  assertAlmostEquals(sum(walls[0]!) + sum(walls[1]!), both, 1e-6 * both);
});

Deno.test("east and west walls share the day, a south wall has its best in winter", () => {
  // Property: symmetry about noon and the low winter sun
  const wall = (azimuth: number) =>
    planeRadiation({ climate: CLIMATE, sun: SUN, plane: { tilt: 90, azimuth } });
  const [east, west, south, north] = [wall(90), wall(270), wall(180), wall(0)];
  assertAlmostEquals(sum(east.beam) / sum(west.beam), 1, 0.01);
  const month = (values: Float64Array, from: number) =>
    sum(values.subarray(from * 24, from * 24 + 720));
  assert(month(south.beam, 45) > month(south.beam, 158), "February against June");
  assert(month(north.beam, 335) === 0 && month(north.beam, 158) > 0);
});

Deno.test("a horizon takes beam where the sun stands behind it, and sky everywhere", () => {
  // Property: a ring of 20° hides the winter noon sun of 17° at 49.6° N and 11.7 % of the even sky
  const plane = { tilt: 0, azimuth: 180 };
  const ring = [0, 90, 180, 270].map((azimuth) => ({ azimuth, elevation: 20 }));
  const open = planeRadiation({ climate: CLIMATE, sun: SUN, plane, model: "isotropic" });
  const hidden = planeRadiation({
    climate: CLIMATE,
    sun: SUN,
    plane,
    model: "isotropic",
    horizon: ring,
  });
  assertAlmostEquals(sum(hidden.beam.subarray(354 * 24, 357 * 24)), 0, 1e-9);
  assert(
    sum(hidden.beam.subarray(170 * 24, 173 * 24)) >
      0.8 * sum(open.beam.subarray(170 * 24, 173 * 24)),
  );
  const share = sum(hidden.skyDiffuse) / sum(open.skyDiffuse);
  assertAlmostEquals(share, Math.cos(20 * Math.PI / 180) ** 2, 0.002);
});

Deno.test("an albedo for each hour brightens the wall in snow alone", () => {
  // Property: ground light follows the albedo of its hour
  const albedo = new Float64Array(8760).fill(0.2).fill(0.7, 0, 2000);
  const inputs = { climate: CLIMATE, sun: SUN, plane: { tilt: 90, azimuth: 180 } };
  const snow = planeRadiation({ ...inputs, albedo }).groundReflected;
  const bare = planeRadiation(inputs).groundReflected;
  assertAlmostEquals(sum(snow.subarray(0, 2000)) / sum(bare.subarray(0, 2000)), 3.5, 1e-9);
  assertAlmostEquals(sum(snow.subarray(2000)), sum(bare.subarray(2000)), 1e-6);
});

Deno.test("the beam on a wall of any direction is that of the sun's elevation and azimuth", () => {
  // Property: cosine of incidence by the product of two unit vectors, east, north and up, in every
  // hour that the sun stands high enough to be in front of the plane for all of it
  const { elevation, azimuth, upShare } = SUN;
  const vector = (up: number, round: number): readonly [number, number, number] => [
    Math.cos(up) * Math.sin(round),
    Math.cos(up) * Math.cos(round),
    Math.sin(up),
  ];
  const degree = Math.PI / 180;
  let compared = 0;
  for (const plane of [{ tilt: 90, azimuth: 90 }, { tilt: 60, azimuth: 240 }]) {
    const { cosIncidence } = planeRadiation({ climate: CLIMATE, sun: SUN, plane });
    const normal = vector((90 - plane.tilt) * degree, plane.azimuth * degree);
    for (let hour = 0; hour < 8760; hour++) {
      if (upShare[hour]! < 1) continue;
      const sun = vector(elevation[hour]! * degree, azimuth[hour]! * degree);
      const cosine = normal.reduce((total, part, axis) => total + part * sun[axis]!, 0);
      if (Math.abs(cosine) < 0.15) continue;
      // the mean over 15° of a cosine is 1 − (7.5°)²/6 of its middle
      assertAlmostEquals(cosIncidence[hour]!, Math.max(0, cosine), 0.004, `hour ${hour}`);
      compared++;
    }
  }
  assert(compared > 6000, String(compared));
});
