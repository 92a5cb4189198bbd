/** Radiation given at moments turned into means of the hour. @module */
import { HOURS_PER_YEAR } from "../../basics/mod.ts";
import type { HourlySun } from "../../sun/mod.ts";
import type { Place } from "../types.ts";

/** Radiation read at one moment of each hour. */
export interface RadiationAtMoments {
  /** W/m² */
  readonly globalHorizontal: Float64Array;
  /** W/m² */
  readonly directNormal: Float64Array;
  /** W/m² */
  readonly diffuseHorizontal: Float64Array;
  /** hours after the start of the entry at which the values stand, 0 to 1 */
  readonly moment: number;
  readonly place: Place;
  readonly sun: HourlySun;
}

/** Radiation as means of the hour, W/m². */
export interface HourlyRadiation {
  readonly globalHorizontal: Float64Array;
  readonly directNormal: Float64Array;
  readonly diffuseHorizontal: Float64Array;
}

/**
 * Turns radiation at moments into means of the hour, keeping every day's sums.
 *
 * Direct radiation, and diffuse radiation over the sun's height, are taken straight between the
 * moments before and after the middle of the hour and put back on the mean height of the sun in that
 * hour; then both parts of a day are scaled so that its sums of diffuse and of global radiation are
 * those of the file.
 *
 * Own method, in the manner of interpolating the clearness index; checked by closing
 * global = diffuse + direct · cos z.
 *
 * @param inputs the radiation and its moment
 * @returns means of the hour
 */
export function shiftRadiation(inputs: RadiationAtMoments): HourlyRadiation {
  const { sun, moment } = inputs;
  const [step, share] = moment <= 0.5 ? [1, 0.5 - moment] : [-1, moment - 0.5];
  const direct = new Float64Array(HOURS_PER_YEAR);
  const diffuse = new Float64Array(HOURS_PER_YEAR);
  for (let hour = 0; hour < HOURS_PER_YEAR; hour++) {
    const other = (hour + step + HOURS_PER_YEAR) % HOURS_PER_YEAR;
    if (sun.upShare[hour] === 0) continue;
    const between = (values: Float64Array) => (1 - share) * values[hour]! + share * values[other]!;
    direct[hour] = between(inputs.directNormal) * sun.upShare[hour]!;
    diffuse[hour] = between(inputs.diffuseHorizontal);
  }
  const global = new Float64Array(HOURS_PER_YEAR);
  for (let start = 0; start < HOURS_PER_YEAR; start += 24) {
    scaleDay(inputs, start, direct, diffuse, global);
  }
  return { globalHorizontal: global, directNormal: direct, diffuseHorizontal: diffuse };
}

/** A day's direct radiation is raised by at most this factor; what is left goes to the diffuse. */
const MOST_SCALE = 1.5;

function scaleDay(
  inputs: RadiationAtMoments,
  start: number,
  direct: Float64Array,
  diffuse: Float64Array,
  global: Float64Array,
): void {
  const { sun } = inputs;
  let [wantDiffuse, haveDiffuse, wantBeam, haveBeam] = [0, 0, 0, 0];
  const beam = (hour: number) =>
    sun.upShare[hour]! > 0 ? direct[hour]! * sun.cosZenith[hour]! / sun.upShare[hour]! : 0;
  for (let hour = start; hour < start + 24; hour++) {
    wantDiffuse += inputs.diffuseHorizontal[hour]!;
    haveDiffuse += diffuse[hour]!;
    wantBeam += inputs.globalHorizontal[hour]! - inputs.diffuseHorizontal[hour]!;
    haveBeam += beam(hour);
  }
  const beamScale = haveBeam > 0 ? Math.min(MOST_SCALE, Math.max(0, wantBeam) / haveBeam) : 0;
  const restOfBeam = wantBeam - beamScale * haveBeam;
  const diffuseScale = haveDiffuse > 0 ? Math.max(0, wantDiffuse + restOfBeam) / haveDiffuse : 0;
  for (let hour = start; hour < start + 24; hour++) {
    direct[hour]! *= beamScale;
    diffuse[hour]! *= diffuseScale;
    global[hour] = diffuse[hour]! + beam(hour);
  }
}
