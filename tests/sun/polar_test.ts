import { assert, assertAlmostEquals, assertEquals } from "@std/assert";
import { sampleYear } from "../climate/sample.ts";
import {
  dailySun,
  hourlySun,
  planeRadiation,
  skyLongwave,
  sunPaths,
} from "winterground/sun/mod.ts";

const LATITUDES = [90, 78.2, 69.7, 66.6, -66.6, -77.8, -90];
const place = (latitude: number) => ({ latitude, longitude: 15.6, timeZone: 1 });

Deno.test("the sun stays up or down for days beyond the polar circles, and every series is a number", () => {
  // Property: nothing is NaN, no share passes 1, midwinter is dark and midsummer bright all day
  for (const latitude of LATITUDES) {
    const sun = hourlySun(place(latitude));
    for (const [name, series] of Object.entries(sun)) {
      if (typeof series === "number") continue;
      assert(series.every(Number.isFinite), `${name} at ${latitude}`);
    }
    const [dark, bright] = latitude > 0 ? [355, 172] : [172, 355];
    const share = (day: number) => sun.upShare.subarray(day * 24 - 24, day * 24);
    assertEquals(Math.max(...share(dark)), 0, `midwinter at ${latitude}`);
    assertEquals(Math.min(...share(bright)), 1, `midsummer at ${latitude}`);
  }
});

Deno.test("hourlySun() and the short daily formulas agree beyond the polar circles", () => {
  // Source: FAO Irrigation and Drainage Paper 56 (1998), eq. 21 to 25, with the sunset angle held to 0 and π:
  // daily sums within 3 %, or the 1.2 degrees its declination errs by near the equinoxes (700 Wh/m²)
  for (const latitude of LATITUDES) {
    const sun = hourlySun(place(latitude));
    for (let day = 0; day < 365; day += 5) {
      let sum = 0;
      for (let hour = day * 24; hour < day * 24 + 24; hour++) {
        sum += sun.cosZenith[hour]! * sun.extraterrestrialNormal[hour]!;
      }
      const short = dailySun(latitude, day + 1).radiation / 3600;
      assertAlmostEquals(sum, short, Math.max(0.03 * short, 700), `${latitude} day ${day + 1}`);
    }
  }
});

Deno.test("at the pole the sun's height is its declination all day", () => {
  // Property: geometry of the pole
  const sun = hourlySun(place(90));
  sun.elevation.forEach((height, hour) =>
    assertAlmostEquals(height, sun.declination[hour]!, 1e-9, String(hour))
  );
});

Deno.test("planes, skylines and the sky give numbers through polar night and day", () => {
  // Property: finite and not negative; cloud seen before the polar night carries on through it
  const year = sampleYear();
  const horizon = [{ azimuth: 90, elevation: 2 }, { azimuth: 180, elevation: 12 }];
  for (const latitude of LATITUDES) {
    const sun = hourlySun(place(latitude));
    const light = sun.upShare.map((share) => share > 0 ? 100 : 0);
    const climate = {
      ...year,
      place: { ...year.place, ...place(latitude) },
      globalHorizontal: light,
      directNormal: light,
      diffuseHorizontal: light,
    };
    for (const plane of [{ tilt: 90, azimuth: 0 }, { tilt: 45, azimuth: 180 }]) {
      const onPlane = planeRadiation({ climate, sun, plane, horizon });
      for (const series of Object.values(onPlane)) {
        assert((series as Float64Array).every((value) => value >= 0 && Number.isFinite(value)));
      }
    }
    const sky = skyLongwave(climate, sun);
    assert(sky.every((value) => value > 50 && value < 600), `sky at ${latitude}`);
    for (const path of sunPaths(place(latitude), horizon)) {
      assert(Number.isFinite(path.highest) && path.daylight >= 0 && path.daylight <= 24.01);
    }
  }
});

Deno.test("sunPaths() reaches the noon height on days the sun is up for minutes only", () => {
  // Property: highest point = 90° − latitude + declination, also where noon's hour holds sunrise and sunset
  for (const latitude of [66.2, 66.4]) {
    const [midwinter] = sunPaths(place(latitude), [], [355]);
    const sun = hourlySun(place(latitude));
    const highest = 90 - latitude + sun.declination[354 * 24 + 11]!;
    assert(highest > 0);
    assertAlmostEquals(midwinter!.highest, highest, 0.02, String(latitude));
  }
});

Deno.test("polar night does not read clouds out of rounding", () => {
  // Property: the share of clear sky is that of the last day with light, so that equal hours give equal sky
  const year = sampleYear();
  const sun = hourlySun(place(78));
  const climate = {
    ...year,
    place: { ...year.place, ...place(78) },
    dryBulb: year.dryBulb.map(() => -20),
    relativeHumidity: year.relativeHumidity.map(() => 0.8),
    pressure: year.pressure.map(() => 100000),
    globalHorizontal: sun.cosZenith.map((cosine) => 500 * cosine),
  };
  const sky = skyLongwave(climate, sun);
  const night = Array.from({ length: 40 }, (_, day) => sky[(340 + day) % 365 * 24 + 12]!);
  for (const value of night) assertAlmostEquals(value, night[0]!, 1e-9);
});
