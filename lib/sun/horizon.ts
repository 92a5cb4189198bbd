/** Hills, trees and buildings that hide part of the sky. @module */
import { DEGREE, OutOfRangeError } from "../basics/mod.ts";
import { direction } from "./hourly.ts";
import type { HourlySun, Plane } from "./types.ts";

/** One corner of the skyline. */
export interface HorizonPoint {
  /** degrees clockwise from north, 0 to 360 */
  readonly azimuth: number;
  /** degrees above level, 0 to 90 */
  readonly elevation: number;
}

/** The skyline as corners; between them the elevation runs straight, round through north. */
export type Horizon = readonly HorizonPoint[];

const MOMENTS = 6;

/**
 * Elevation of the skyline in one direction, straight between the corners.
 *
 * @param horizon corners in any order; none is a level horizon
 * @param azimuth degrees clockwise from north
 * @returns degrees
 * @throws {OutOfRangeError} if a corner lies outside 0 to 360 or 0 to 90 degrees
 */
export function horizonElevation(horizon: Horizon, azimuth: number): number {
  if (horizon.length === 0) return 0;
  for (const point of horizon) {
    check("azimuth of a horizon corner", point.azimuth, 360);
    check("elevation of a horizon corner", point.elevation, 90);
  }
  const corners = [...horizon].sort((a, b) => a.azimuth - b.azimuth);
  const turned = ((azimuth % 360) + 360) % 360;
  const after = corners.findIndex((point) => point.azimuth >= turned);
  const right = corners[after === -1 ? 0 : after]!;
  const left = corners[(after === -1 ? 0 : after) - 1] ?? corners.at(-1)!;
  const width = ((right.azimuth - left.azimuth) + 360) % 360;
  if (width === 0) return right.elevation;
  const along = ((turned - left.azimuth) + 360) % 360;
  return left.elevation + along / width * (right.elevation - left.elevation);
}

function check(name: string, value: number, high: number): void {
  if (!(value >= 0 && value <= high)) throw new OutOfRangeError(name, value, 0, high, "degrees");
}

/**
 * Share of the sun's time above the level horizon in one hour that it stands behind the skyline,
 * from six moments of the hour.
 *
 * @param horizon the skyline
 * @param sun hourly sun
 * @param hour index of the hour
 * @returns 0 (free) to 1 (hidden)
 */
export function horizonBlocks(horizon: Horizon, sun: HourlySun, hour: number): number {
  const from = sun.hourAngleStart[hour]!;
  const step = (sun.hourAngleEnd[hour]! - from) / MOMENTS;
  let hidden = 0;
  for (let moment = 0; moment < MOMENTS; moment++) {
    const angle = (from + (moment + 0.5) * step) * DEGREE;
    const [elevation, azimuth] = direction(sun.latitude, sun.declination[hour]!, angle);
    if (elevation < horizonElevation(horizon, azimuth)) hidden++;
  }
  return hidden / MOMENTS;
}

/**
 * Share of the even sky radiation on a plane that the skyline leaves, by summing cos θ over the
 * half-sphere in steps of 2°.
 *
 * @param horizon the skyline
 * @param plane tilt and azimuth
 * @returns 0 to 1, where 1 is the sky of an open site
 */
export function horizonSkyShare(horizon: Horizon, plane: Plane): number {
  let seen = 0;
  let open = 0;
  const tilt = plane.tilt * DEGREE;
  for (let azimuth = 1; azimuth < 360; azimuth += 2) {
    const skyline = horizonElevation(horizon, azimuth);
    for (let elevation = 1; elevation < 90; elevation += 2) {
      const up = Math.sin(elevation * DEGREE);
      const level = Math.cos(elevation * DEGREE);
      const cosine = up * Math.cos(tilt) +
        level * Math.sin(tilt) * Math.cos((azimuth - plane.azimuth) * DEGREE);
      if (cosine <= 0) continue;
      open += cosine * level;
      if (elevation > skyline) seen += cosine * level;
    }
  }
  return open === 0 ? 1 : seen / open;
}
