import { assert, assertAlmostEquals, assertEquals } from "@std/assert";
import {
  ANGLES,
  findGlazing,
  glazedPlanes,
  glazingAngles,
  glazingLight,
} from "../../../lib/house/mod.ts";
import { HOUSE, simpleYear } from "../fixtures.ts";

const planes = [40, 120].map((area, index) => ({
  name: `plane ${index}`,
  plane: { tilt: 90 - 60 * index, azimuth: 180 },
  area,
  months: Array.from({ length: 12 }, (_, month) => ({
    hayDavies: 60 + month + index,
    isotropic: 55 + month,
    open: 62 + month + index,
  })),
}));

Deno.test("glazedPlanes() sums months and takes the mean of all glazing by area", () => {
  // Property: January 60 on a quarter and 61 on three quarters of the area; 60 + 61 + 71 in winter
  const { planes: [first], all, winterTaken } = glazedPlanes(planes);
  assertEquals(first!.winter.hayDavies, 60 + 61 + 71);
  assertEquals(first!.year.isotropic, 12 * 55 + 66);
  assertEquals(all.months[0]!.hayDavies, 60.75);
  assertEquals(all.area, 160);
  assertAlmostEquals(winterTaken, 1 - (192 + 2.25) / (198 + 2.25), 1e-12);
});

Deno.test("glazingAngles() falls to nothing at grazing light and lies above its diffuse value before", () => {
  // Property: monotone beyond 50 degrees, none at 90
  const { beam, diffuse } = glazingAngles(findGlazing("twin-wall-8mm"));
  assertEquals(beam.length, ANGLES.length);
  for (let angle = 51; angle <= 90; angle++) assert(beam[angle]! <= beam[angle - 1]! + 1e-12);
  assert(Math.abs(beam[90]!) < 1e-9);
  assert(beam[0]! > diffuse && diffuse > beam[85]!);
});

Deno.test("glazingLight() names the study's glazing first and once", () => {
  // Property: order
  const light = glazingLight(
    { ...HOUSE, glazing: "double-glass" },
    simpleYear({ temperature: () => 5, sun: 0.4 }),
  );
  const ids = light.angles.map(({ glazing }) => glazing.id);
  assertEquals(ids[0], "double-glass");
  assertEquals(new Set(ids).size, ids.length);
  assert(light.planes.length > 0 && light.all.year.hayDavies > 0);
});
