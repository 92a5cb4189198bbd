import { assert, assertAlmostEquals } from "@std/assert";
import { dailySun, extraterrestrialNormal, hourlySun, sunPosition } from "winterground/sun/mod.ts";

const GOLDEN = { latitude: 39.742476, longitude: -105.1786, elevation: 1830.14, deltaT: 67 };

Deno.test("sunPosition() gives the worked example of Reda & Andreas (NREL/TP-560-34302, 2008, table A5.1)", () => {
  // Source: zenith and azimuth to the printed 0.00001°, declination δ'
  // likewise; hour angle H' to 5e-5° as it is worked back from zenith and azimuth on a round earth
  const position = sunPosition({
    ...GOLDEN,
    time: new Date("2003-10-17T19:30:30Z"),
    refraction: { pressure: 82000, temperature: 11 },
  });
  assertAlmostEquals(position.zenith, 50.11162, 5e-6);
  assertAlmostEquals(position.azimuth, 194.34024, 5e-6);
  const bare = sunPosition({ ...GOLDEN, time: new Date("2003-10-17T19:30:30Z") });
  assertAlmostEquals(90 - bare.zenith, 39.872046, 5e-6);
  assertAlmostEquals(bare.declination, -9.316179, 5e-6);
  assertAlmostEquals(bare.hourAngle, 11.10629, 5e-5);
});

Deno.test("sunPosition() puts the sun on the horizon and the meridian at the published times for Golden (NREL SPA as quoted in the tests of pvlib-python), 2 January and 2 August 2015", () => {
  // Source: sunrise 07:21:55 and 05:00:27, transit 12:04:45 and 12:06:58, sunset 16:47:43 MST;
  // centre at 90.8333° at rise and set (34' and 16'); 0.02° is 5 s
  const moments = [
    ["2015-01-02T14:21:55Z", "edge"],
    ["2015-01-02T19:04:45Z", "meridian"],
    ["2015-01-02T23:47:43Z", "edge"],
    ["2015-08-02T12:00:27Z", "edge"],
    ["2015-08-02T19:06:58Z", "meridian"],
  ] as const;
  for (const [time, where] of moments) {
    const position = sunPosition({ ...GOLDEN, elevation: 0, time: new Date(time) });
    if (where === "edge") assertAlmostEquals(position.zenith, 90.8333, 0.02, time);
    else assertAlmostEquals(position.hourAngle, 0, 0.02, time);
  }
});

Deno.test("hourlySun() stands within 0.02° of the Solar Position Algorithm (Reda & Andreas 2008) in every month", () => {
  // Source: the algorithm at the middle of the hour; 0.02° covers a declination held still over the
  // hour (0.008° to either side) and interpolated over the day
  const place = { latitude: 49.6, longitude: -101.3, timeZone: -6 };
  const sun = hourlySun(place);
  let compared = 0;
  for (let hour = 8; hour < 8760; hour += 211) {
    if (sun.upShare[hour] !== 1) continue;
    const time = new Date(Date.UTC(2010, 0, 1, 6, 30) + hour * 3.6e6);
    const position = sunPosition({ ...place, time });
    assertAlmostEquals(sun.elevation[hour]!, 90 - position.zenith, 0.02);
    assertAlmostEquals(sun.azimuth[hour]!, position.azimuth, 0.02);
    compared++;
  }
  assert(compared > 12, `only ${compared} hours compared`);
});

Deno.test("extraterrestrialNormal() gives 1383.64 W/m² on 26 October 2016 (Spencer 1971, solar constant 1366.1, as in the open solar library pvlib)", () => {
  // Source: value quoted in the tests of pvlib-python [pvlib-2018]; to its last digit
  assertAlmostEquals(extraterrestrialNormal(300), 1383.64, 0.05);
});

Deno.test("dailySun() gives the extraterrestrial radiation and daylight of FAO-56 (1998), examples 8, 9, 17, 18", () => {
  // Source: FAO Irrigation and Drainage Paper 56: 3 September at 20° S, Bangkok in April (15 April),
  // Uccle on 6 July; to the printed digit, half of it more where the latitude is rounded
  const cases = [
    { latitude: -20, day: 246, radiation: 32.2, daylight: 11.7, digits: [0.05, 0.05] },
    { latitude: 13 + 44 / 60, day: 105, radiation: 38.06, daylight: 12.31, digits: [0.02, 0.01] },
    { latitude: 50.8, day: 187, radiation: 41.09, daylight: 16.1, digits: [0.01, 0.05] },
  ];
  for (const { latitude, day, radiation, daylight, digits } of cases) {
    const sun = dailySun(latitude, day);
    assertAlmostEquals(sun.radiation / 1e6, radiation, digits[0]!);
    assertAlmostEquals(sun.daylight / 3600, daylight, digits[1]!);
  }
  const september = dailySun(-20, 246);
  assertAlmostEquals(september.inverseDistanceSquared, 0.985, 0.0005);
  assertAlmostEquals(september.declination, 0.120, 0.0005);
  assertAlmostEquals(september.sunsetHourAngle, 1.527, 0.0005);
});

Deno.test("dailySun() gives McMahon et al. 2013 (HESS 17:1331), supplement, Alice Springs 20 July 1980", () => {
  // Source: day 202, 23.7951° S: dr 0.9688, δ 0.3557, ωs 1.4063, N 10.7431 h, Ra 23.6182 MJ/(m² d)
  const sun = dailySun(-23.7951, 202);
  assertAlmostEquals(sun.inverseDistanceSquared, 0.9688, 5e-5);
  assertAlmostEquals(sun.declination, 0.3557, 5e-5);
  assertAlmostEquals(sun.sunsetHourAngle, 1.4063, 5e-5);
  assertAlmostEquals(sun.daylight / 3600, 10.7431, 5e-4);
  assertAlmostEquals(sun.radiation / 1e6, 23.6182, 5e-4);
});

Deno.test("hourlySun() sums up over the year to the extraterrestrial radiation of FAO-56 eq. 21 within 0.5 %", () => {
  // Source: FAO-56 (1998) [fao56-1998] eq. 21 to 25; its declination makes both half-years equally
  // long, so north and south are summed together; the solar constants differ by 0.05 %
  for (const latitude of [0, 30, 40, 45, 55]) {
    let [exact, short] = [0, 0];
    for (const side of [latitude, -latitude]) {
      const sun = hourlySun({ latitude: side, longitude: 0, timeZone: 0 });
      sun.cosZenith.forEach((cosine, hour) =>
        exact += cosine * sun.extraterrestrialNormal[hour]! * 3600
      );
      for (let day = 1; day <= 365; day++) short += dailySun(side, day).radiation;
    }
    assertAlmostEquals(exact / short, 1, 0.005, `latitude ${latitude}`);
  }
});
