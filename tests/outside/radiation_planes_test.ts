import { assertAlmostEquals } from "@std/assert";
import {
  diffuseShare,
  groundOnPlane,
  incidencePath,
  positiveMean,
  skyOnPlane,
} from "winterground/sun/mod.ts";

const DEGREE = Math.PI / 180;

/**
 * Rows of the transposition tests of pvlib-python [pvlib-2018]: DHI, DNI, GHI, apparent zenith,
 * azimuth.
 */
const ROWS = [
  [40.46149818, 316.1949056, 79.73860422, 82.85457044, 66.71410338],
  [118.45831879, 939.95469881, 1042.48031487, 10.56413562, 144.76567754],
  [62.03376265, 646.22886049, 257.20751138, 72.41687122, 287.04104128],
] as const;
const ISOTROPIC = [35.728402, 104.601328, 54.777191];
const EVEN = [27.177514, 30.181807, 27.983728];
const CIRCUMSOLAR = [0, 72.813055, 5.207138];
const GROUND = [3.731058, 48.778813, 12.035025];

Deno.test("skyOnPlane() gives the isotropic and Hay–Davies values quoted in the tests of pvlib-python, tilt 40° south", () => {
  // Source: pvlib-python tests [pvlib-2018] of irradiance (values of an older independent code),
  // extraterrestrial 1321.1655834 W/m²; to the last digit printed
  ROWS.forEach(([diffuse, direct, , zenith, azimuth], row) => {
    const cosZenith = Math.cos(zenith * DEGREE);
    const moment = {
      diffuseHorizontal: diffuse,
      directNormal: direct,
      extraterrestrialNormal: 1321.1655834833093,
      cosZenith,
      cosIncidence: cosZenith * Math.cos(40 * DEGREE) +
        Math.sin(zenith * DEGREE) * Math.sin(40 * DEGREE) * Math.cos((azimuth - 180) * DEGREE),
      tilt: 40,
    };
    assertAlmostEquals(skyOnPlane(moment, "isotropic").even, ISOTROPIC[row]!, 1e-6);
    const sky = skyOnPlane(moment, "hay-davies");
    assertAlmostEquals(sky.even, EVEN[row]!, 1e-6);
    assertAlmostEquals(sky.circumsolar, CIRCUMSOLAR[row]!, 1e-6);
  });
});

Deno.test("groundOnPlane() gives the reflected values quoted in the tests of pvlib-python, albedo 0.40", () => {
  // Source: pvlib-python tests [pvlib-2018] of get_ground_diffuse; to the last digit printed
  ROWS.forEach(([, , global], row) => {
    assertAlmostEquals(groundOnPlane(global, 0.4, 40), GROUND[row]!, 1e-6);
  });
});

Deno.test("diffuse split, beam ratio and isotropic sky give Duffie & Beckman example 2.15.1: 1.17 MJ/m²", () => {
  // Source: Duffie & Beckman 2013 [duffie-beckman-2013], examples 2.10.2 and 2.15.1 (from memory,
  // recomputed from the formulas): 60° south at 40° N, 9 to 10 h on 20 February, 1.04 MJ/m², albedo
  // 0.60; printed digits
  const declination = 23.45 * Math.sin(2 * Math.PI * (284 + 51) / 365);
  const [from, to] = [-45 * DEGREE, -30 * DEGREE];
  const level = incidencePath({ tilt: 0, azimuth: 180 }, 40, declination);
  const tilted = incidencePath({ tilt: 60, azimuth: 180 }, 40, declination);
  const outside = 3600 * 1367 * (1 + 0.033 * Math.cos(2 * Math.PI * 51 / 365)) *
    positiveMean(level, from, to).mean / 1e6;
  assertAlmostEquals(outside, 2.335, 0.0005);
  const share = diffuseShare(1.04 / outside);
  assertAlmostEquals(share, 0.765, 0.0005);
  const at = (path: typeof level) => path.constant + path.cosine * Math.cos(-37.5 * DEGREE);
  const ratio = at(tilted) / at(level);
  assertAlmostEquals(ratio, 1.7133, 0.0001);
  const diffuse = 1.04 * share;
  const beam = (1.04 - diffuse) * ratio;
  const sky = skyOnPlane({
    diffuseHorizontal: diffuse,
    directNormal: 0,
    extraterrestrialNormal: 0,
    cosIncidence: 0,
    cosZenith: 0,
    tilt: 60,
  }, "isotropic").even;
  const ground = groundOnPlane(1.04, 0.6, 60);
  assertAlmostEquals(beam, 0.418, 0.001);
  assertAlmostEquals(sky, 0.597, 0.001);
  assertAlmostEquals(ground, 0.156, 0.0005);
  assertAlmostEquals(beam + sky + ground, 1.17, 0.005);
});

Deno.test("Hay–Davies in the case of Duffie & Beckman example 2.15.1 gives 1.251 MJ/m²", () => {
  // Source: Hay–Davies formula with the numbers of the example (recomputed from the formula)
  const [total, outside, share, ratio] = [1.04, 2.33546, 0.76503, 1.71330];
  const diffuse = total * share;
  const index = (total - diffuse) / outside;
  const cosZenith = 0.5;
  const sky = skyOnPlane({
    diffuseHorizontal: diffuse,
    directNormal: index,
    extraterrestrialNormal: 1,
    cosIncidence: ratio * cosZenith,
    cosZenith,
    tilt: 60,
  }, "hay-davies");
  const sum = (total - diffuse) * ratio + sky.even + sky.circumsolar +
    groundOnPlane(total, 0.6, 60);
  assertAlmostEquals(sum, 1.251, 0.001);
});
