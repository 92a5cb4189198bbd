import { assertAlmostEquals } from "@std/assert";
import {
  clearSkyEmissivity,
  hourlySun,
  skyLongwave,
  type SkyYear,
  splitGlobal,
} from "winterground/sun/mod.ts";

Deno.test("clearSkyEmissivity() is 0.7743 at a dew point of 10 degC, 0.013 more at midnight than at 6 h and less at noon (Berdahl & Martin 1984)", () => {
  // Source: Berdahl & Martin 1984 [berdahl-martin-1984], Solar Energy 32:663, worked by hand: 0.711
  // + 0.056 + 0.0073 = 0.7743; 0.711 − 0.056 + 0.0073 = 0.6623 at −10 degC; 0.00012 for each hPa
  // (12 hPa are 0.00144)
  const at = (dewPoint: number, hourOfDay: number, pressure = 1e5) =>
    clearSkyEmissivity({ dewPoint, hourOfDay, pressure });
  assertAlmostEquals(at(10, 6), 0.7743, 1e-9);
  assertAlmostEquals(at(-10, 6), 0.6623, 1e-9);
  assertAlmostEquals(at(10, 0) - at(10, 6), 0.013, 1e-9);
  assertAlmostEquals(at(10, 12) - at(10, 6), -0.013, 1e-9);
  assertAlmostEquals(at(10, 6, 101200) - at(10, 6), 0.00144, 1e-9);
});

Deno.test("the sky is black without sun for days, and its clear emissivity times σT⁴ in full sun (Crawford & Duchon 1999)", () => {
  // Source: Crawford & Duchon 1999 [crawford-duchon-1999], J. Appl. Meteorol. 38:474, both ends of
  // the blend; σ·278.15⁴ = 339.41 W/m² by hand
  const hours = 8760;
  const place = { latitude: 49.6, longitude: -101.3, timeZone: -6, elevation: 560 };
  const sun = hourlySun(place);
  const even = (value: number) => new Float64Array(hours).fill(value);
  const year = (globalHorizontal: Float64Array): SkyYear => ({
    place,
    dryBulb: even(5),
    relativeHumidity: even(0.6),
    globalHorizontal,
    pressure: even(94800),
    skyLongwave: null,
  });
  const overcast = skyLongwave(year(even(0)), sun);
  overcast.forEach((value) => assertAlmostEquals(value, 339.41, 0.02));
  const clear = skyLongwave(
    year(sun.cosZenith.map((cosine, hour) => cosine * sun.extraterrestrialNormal[hour]!)),
    sun,
  );
  // dew point of 5 degC and 60 %: −2.1 degC by any chart; ε = 0.711 − 0.0118 + 0.0003 − 0.0062
  // before the time of day, which moves it by 0.013 at most; 0.0007 for the rounded dew point
  const mean = clear.reduce((sum, value) => sum + value, 0) / hours / 339.41;
  assertAlmostEquals(mean, 0.6933, 0.0007);
  assertAlmostEquals(clear[24 * 180]! / 339.41, 0.6933 + 0.013, 0.0007);
});

Deno.test("splitGlobal() puts 65.9 % of the light into the diffuse at a clearness of 0.5 (Erbs, Klein & Duffie 1982)", () => {
  // Source: Erbs et al. 1982 [erbs-1982], worked by hand: 0.9511 − 0.0802 + 1.097 − 2.07975 + 0.771
  // = 0.65915; 1 − 0.09·0.2 = 0.982 at 0.2
  const hour = { cosZenith: 0.5, upShare: 1, extraterrestrialNormal: 1360 };
  for (const [clearness, share] of [[0.5, 0.65915], [0.2, 0.982]] as const) {
    const globalHorizontal = clearness * 680;
    const { directNormal, diffuseHorizontal } = splitGlobal({ ...hour, globalHorizontal });
    assertAlmostEquals(diffuseHorizontal / globalHorizontal, share, 1e-9);
    assertAlmostEquals(directNormal, globalHorizontal * (1 - share) / 0.5, 1e-9);
  }
});
