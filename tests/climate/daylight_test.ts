import { assert, assertEquals } from "@std/assert";
import { daylight } from "winterground/climate/mod.ts";
import { horizonElevation } from "winterground/sun/mod.ts";

const place = { name: "", latitude: 50, longitude: 0, elevation: 0, timeZone: 0 };

Deno.test("daylight() has no short day at the equator and more of them northward", () => {
  // Property: order
  const tenHours = (latitude: number) =>
    daylight({ ...place, latitude }).shortDays.find((row) => row.hours === 10)!.count;
  assertEquals(tenHours(5), 0);
  assert(tenHours(40) > 0 && tenHours(55) > tenHours(40));
});

Deno.test("daylight() draws the skyline of the place, level where there is none", () => {
  // Property: the horizon's own elevation in every direction; it hides winter sun
  const horizon = [{ azimuth: 120, elevation: 5 }, { azimuth: 240, elevation: 25 }];
  const { skyline, paths } = daylight({ ...place, horizon });
  assertEquals(skyline.length, 180);
  for (const { azimuth, elevation } of skyline) {
    assertEquals(elevation, horizonElevation(horizon, azimuth));
  }
  assert(paths[0]!.hidden > 0);
  assert(daylight(place).skyline.every(({ elevation }) => elevation === 0));
});
