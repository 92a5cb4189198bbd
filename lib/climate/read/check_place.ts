/** Is the place of a climate one the sun and the air can be worked out for? @module */
import { FaultList } from "./table.ts";
import type { Place } from "../types.ts";

const LIMITS: readonly [
  key: keyof Place,
  words: string,
  low: number,
  high: number,
  unit: string,
][] = [
  ["latitude", "latitude", -90, 90, "degrees"],
  ["longitude", "longitude", -180, 180, "degrees"],
  ["elevation", "elevation", -450, 6000, "m"],
  ["timeZone", "time zone", -12, 14, "hours east of UTC"],
];

/** How far a clock may be from the sun, h; the largest on earth is about 3. */
const CLOCK_FROM_SUN = 4;

/**
 * Refuses a place that is none.
 *
 * @param place of the climate
 * @param file it was read from, for the message
 * @throws {InputErrors} for values out of range and a time zone that does not fit the longitude
 */
export function checkPlace(place: Place, file: string): void {
  const faults = new FaultList();
  for (const [key, words, low, high, unit] of LIMITS) {
    const value = place[key] as number;
    if (value >= low && value <= high) continue;
    faults.add(
      `Cannot use the place: expected ${words} of ${low} to ${high} ${unit}, found ${value}`,
      {
        file,
      },
    );
  }
  faults.throwIfAny();
  const reason = clockFault(place);
  if (reason === undefined) return;
  faults.add(`Cannot use the place: ${reason}`, { file });
  faults.throwIfAny();
}

/**
 * Why longitude and time zone of a place cannot both be right, with the sign to write where that is
 * the likely slip; undefined where they fit.
 */
export function clockFault(place: Pick<Place, "longitude" | "timeZone">): string | undefined {
  const { longitude, timeZone } = place;
  if (clockFits(longitude, timeZone)) return undefined;
  const zone = timeZone < 0 ? `UTC${timeZone}` : `UTC+${timeZone}`;
  const side = longitude > 0 ? "west of Greenwich is negative" : "east of Greenwich is positive";
  const advice = clockFits(-longitude, timeZone)
    ? `longitude ${side}: write ${-longitude} deg`
    : "east is positive for both; correct the one that is wrong";
  return `longitude ${longitude} deg and time zone ${zone} do not fit (${advice})`;
}

function clockFits(longitude: number, timeZone: number): boolean {
  return Math.abs(((timeZone - longitude / 15 + 36) % 24) - 12) <= CLOCK_FROM_SUN;
}

/** Longitudes nearer than this to another's mirror image are that place with the wrong sign, degrees. */
const MIRRORED = 1;

/** True where two longitudes are the same but for the sign, and far from Greenwich. */
function isMirrored(one: number, other: number): boolean {
  return Math.abs(one + other) < MIRRORED && Math.abs(one - other) > 4 * MIRRORED;
}

/**
 * Why the longitudes of a study and of its weather cannot both be right; undefined where they can.
 *
 * @param study degrees, of the study's place
 * @param weather degrees, of the place that the weather file names
 */
export function mirroredFault(study: number, weather: number): string | undefined {
  if (!isMirrored(study, weather)) return undefined;
  return `"place.longitude" is ${study} deg and that of the weather file ${weather} deg: one of ` +
    "them has the wrong sign (east is positive, west negative)";
}
