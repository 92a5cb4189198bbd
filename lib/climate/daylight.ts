/** The sun of a place through the year: its paths, the skyline before them, short days. @module */
import { type DayPath, horizonElevation, type ShortDays, shortDays, sunPaths } from "../sun/mod.ts";
import type { Place } from "./types.ts";

/** Height of the skyline in one direction. */
export interface SkylinePoint {
  /** degrees clockwise from north */
  readonly azimuth: number;
  /** degrees above level */
  readonly elevation: number;
}

/** The season of days shorter than some length. */
export interface ShortDayRow extends ShortDays {
  /** h of daylight */
  readonly hours: number;
}

/** Sun paths, skyline and short days of a place. */
export interface Daylight {
  /** 21st of December to June */
  readonly paths: readonly DayPath[];
  /** every two degrees, from north */
  readonly skyline: readonly SkylinePoint[];
  /** days shorter than 8 to 12 h */
  readonly shortDays: readonly ShortDayRow[];
}

/** h of daylight */
const DAY_LENGTHS = [8, 9, 10, 11, 12];

/**
 * The sun of a place.
 *
 * @param place latitude, longitude and time zone, and the skyline where there is one
 */
export function daylight(place: Place): Daylight {
  const horizon = place.horizon ?? [];
  return {
    paths: sunPaths(place, horizon),
    skyline: Array.from({ length: 180 }, (_, index) => ({
      azimuth: 2 * index,
      elevation: horizonElevation(horizon, 2 * index),
    })),
    shortDays: DAY_LENGTHS.map((hours) => ({
      hours,
      ...shortDays(place.latitude, hours * 3600),
    })),
  };
}
