import { assert, assertAlmostEquals, assertEquals } from "@std/assert";
import { dailySun, shortDays, sunPaths } from "winterground/sun/mod.ts";

Deno.test("the season of short days lies about the solstice and grows with the latitude", () => {
  // Property: symmetric about 21 December within the days the short formulas are off
  const { count, first, last } = shortDays(49.6, 10 * 3600);
  const before = 355 - first!;
  assert(Math.abs(before - (last! + 10)) <= 6, `${first} ${last}`);
  assertEquals(count, 365 - first! + 1 + last!);
  assert(shortDays(60, 10 * 3600).count > count);
  assertEquals(shortDays(10, 10 * 3600), { count: 0, first: null, last: null });
});

Deno.test("sunPaths() culminate at 90° less latitude plus declination and last as long as the daily formula says", () => {
  // Property: geometry of the noon sun; daylight to 0.25 h, as the short formula and five-minute steps give
  const place = { latitude: 49.6, longitude: -101.3, timeZone: -6 };
  const paths = sunPaths(place);
  assertAlmostEquals(paths[0]!.highest, 90 - 49.6 - 23.44, 0.1);
  assertAlmostEquals(paths.at(-1)!.highest, 90 - 49.6 + 23.44, 0.1);
  for (const path of paths) {
    assertAlmostEquals(path.daylight, dailySun(49.6, path.day).daylight / 3600, 0.25);
    assertEquals(path.hidden, 0);
  }
  const wall = sunPaths(place, [{ azimuth: 0, elevation: 20 }]);
  assertEquals(wall[0]!.hidden, wall[0]!.daylight, "the December sun stays below 20°");
  assert(wall.at(-1)!.hidden < 5);
});
