/** The weather of a year without its history. @module */
import type { ClimateYear } from "./types.ts";

/** Names of the hourly series of a year; the last two may be absent. */
export const HOURLY_SERIES = [
  "dryBulb",
  "relativeHumidity",
  "globalHorizontal",
  "directNormal",
  "diffuseHorizontal",
  "windSpeed",
  "pressure",
  "skyLongwave",
  "albedo",
] as const satisfies readonly (keyof ClimateYear)[];

/**
 * The year as later chapters compute with it: hours and place alone. Where the file lies, what it
 * is called and what was said while reading it do not change a result.
 */
export function plainWeather(year: ClimateYear): ClimateYear {
  const { normals: _, ...hours } = year;
  return { ...hours, place: { ...year.place, name: "" }, source: "", layout: "", notices: [] };
}

/** The year without the skyline, for what knows the open sky alone. */
export function openWeather(year: ClimateYear): ClimateYear {
  const { horizon: _, ...place } = year.place;
  return plainWeather({ ...year, place });
}

/** Pa, mean of the year. */
export function meanPressure({ climate }: { readonly climate: ClimateYear }): number {
  const { pressure } = climate;
  return pressure.reduce((sum, value) => sum + value, 0) / pressure.length;
}
