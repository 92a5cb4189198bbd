/** Paths of the sun across the sky, for charts. @module */
import { DEGREE } from "../basics/mod.ts";
import { type Horizon, horizonElevation } from "./horizon.ts";
import { direction, hourAngleAtMidnight, hourlySun } from "./hourly.ts";
import type { SunPlace } from "./types.ts";

/** One moment on a path. */
export interface PathPoint {
  /** h after local midnight, standard time */
  readonly clock: number;
  /** degrees clockwise from north */
  readonly azimuth: number;
  /** degrees above level */
  readonly elevation: number;
  /** true where a skyline is given and the sun stands behind it */
  readonly hidden: boolean;
}

/** The sun's way over one day. */
export interface DayPath {
  /** day of the year, 1 on 1 January */
  readonly day: number;
  /** from sunrise to sunset, every five minutes */
  readonly points: readonly PathPoint[];
  /** highest elevation, degrees */
  readonly highest: number;
  /** h from sunrise to sunset over a level horizon */
  readonly daylight: number;
  /** h of them with the sun behind the skyline */
  readonly hidden: number;
}

/** The 21st of December to June; the other half of the year runs over the same paths to a degree. */
const PATH_DAYS: readonly number[] = [355, 21, 52, 80, 111, 141, 172];

const STEP = 1 / 12;

/**
 * Paths of the sun on some days of the year, without refraction.
 *
 * @param place where
 * @param horizon skyline; open where not given
 * @param days days of the year, 1 to 365
 * @returns one path a day
 */
export function sunPaths(
  place: SunPlace,
  horizon: Horizon = [],
  days: readonly number[] = PATH_DAYS,
): DayPath[] {
  const sun = hourlySun(place);
  return days.map((day) => {
    const noon = (day - 1) * 24 + 12;
    const declination = sun.declination[noon]!;
    const midnight = hourAngleAtMidnight(sun, day - 1);
    const points: PathPoint[] = [];
    for (let step = 0; step < 24 / STEP; step++) {
      const clock = (step + 0.5) * STEP;
      const angle = (midnight + 15 * clock) * DEGREE;
      const [elevation, azimuth] = direction(place.latitude, declination, angle);
      if (elevation < 0) continue;
      points.push({
        clock,
        azimuth,
        elevation,
        hidden: elevation < horizonElevation(horizon, azimuth),
      });
    }
    return {
      day,
      points,
      highest: points.reduce((most, point) => Math.max(most, point.elevation), 0),
      daylight: points.length * STEP,
      hidden: points.filter((point) => point.hidden).length * STEP,
    };
  });
}
