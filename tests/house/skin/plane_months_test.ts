import { assert, assertAlmostEquals, assertEquals } from "@std/assert";
import { glazedPlaneMonths } from "winterground/house/mod.ts";
import { openSmallStudy } from "../../harness/small_study.ts";

Deno.test("glazedPlaneMonths() names every glazed plane once and keeps the area", async () => {
  // Property: planes apart, areas of the geometry; a skyline only takes light away
  const { climate, house } = await openSmallStudy();
  const open = glazedPlaneMonths(house, climate);
  assertEquals(
    new Set(open.map(({ plane }) => `${plane.tilt} ${plane.azimuth}`)).size,
    open.length,
  );
  const horizon = [{ azimuth: 180, elevation: 15 }];
  const hidden = glazedPlaneMonths(house, { ...climate, place: { ...climate.place, horizon } });
  open.forEach((plane, index) => {
    plane.months.forEach((month, at) => {
      const behind = hidden[index]!.months[at]!;
      assertEquals(behind.open, month.open);
      assertEquals(month.hayDavies, month.open);
      assert(behind.hayDavies < month.hayDavies);
      assert(behind.isotropic < month.isotropic);
    });
  });
});

Deno.test("an even sky gives a south wall less winter light than one bright round the sun", async () => {
  // Property: diffuse light near the sun falls steeper on a plane that faces it (Hay & Davies 1980
  // [hay-davies-1980])
  const { climate, house } = await openSmallStudy();
  const wall = glazedPlaneMonths(house, climate).find(({ plane }) =>
    plane.tilt === 90 && Math.abs(plane.azimuth - 180) < 30
  );
  assert(wall !== undefined);
  for (const month of [11, 0]) {
    assert(wall.months[month]!.hayDavies > wall.months[month]!.isotropic);
  }
});

Deno.test("a level plane gets the global radiation whatever the model of the sky", async () => {
  // Property: closure on the horizontal, within what split and hourly sun leave over (1 %)
  const { climate, house } = await openSmallStudy();
  const planes = glazedPlaneMonths({
    ...house,
    shape: "gable",
    ridgeHeight: house.eaveHeight + 1e-4,
  }, climate);
  const roof = planes.find(({ plane }) => plane.tilt < 1);
  assert(roof !== undefined, "a nearly flat roof");
  const year = climate.globalHorizontal.reduce((sum, value) => sum + value, 0) / 1000;
  for (const kind of ["hayDavies", "isotropic"] as const) {
    const total = roof.months.reduce((sum, month) => sum + month[kind], 0);
    assertAlmostEquals(total / year, 1, 0.01);
  }
});
