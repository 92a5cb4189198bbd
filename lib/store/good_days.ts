/** Heat put in on good days. @module */
import { sum } from "d3-array";
import type { StoreYear } from "./types.ts";

const NORTHERN_WINTER = (day: number) => day < 59 || day >= 334;
const SOUTHERN_WINTER = (day: number) => day >= 151 && day < 243;

/**
 * Whether a day of the year lies in the three winter months of a place.
 *
 * @param latitude degrees, north positive
 */
export function winterDays(latitude: number): (day: number) => boolean {
  return latitude < 0 ? SOUTHERN_WINTER : NORTHERN_WINTER;
}

/**
 * Heat put in on the `rank`-th best of the chosen days.
 *
 * @param year hourly year of the store, W
 * @param rank place of the day in the order from 1, the best
 * @param chosen days of the year, from 0, that count; all unless given
 * @returns kWh
 */
export function goodDay(
  year: Pick<StoreYear, "sensible" | "latent">,
  rank: number,
  chosen: (day: number) => boolean = () => true,
): number {
  const heat = year.sensible.map((value, hour) => Math.max(0, value + year.latent[hour]!) / 1000);
  const days = Array.from({ length: 365 }, (_, day) => day).filter(chosen);
  return days.map((day) => sum(heat.subarray(day * 24, day * 24 + 24)))
    .sort((a, b) => b - a)[rank - 1]!;
}
