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
  const apart = Math.abs(((place.timeZone - place.longitude / 15 + 36) % 24) - 12);
  if (apart <= CLOCK_FROM_SUN) return;
  faults.add(
    `Cannot use the place: longitude ${place.longitude} and time zone ${place.timeZone} do not fit ` +
      "(east is positive for both); correct the one that is wrong",
    { file },
  );
  faults.throwIfAny();
}
