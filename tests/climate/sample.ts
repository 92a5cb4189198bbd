/** Climate years for the tests of this folder. @module */
import { type ClimateYear, readNormals, yearFromNormals } from "winterground/climate/mod.ts";
import normalsText from "../../data/climates/aldersett_normals.csv" with { type: "text" };

/** The invented place of the demo study. */
export const ALDERSETT = {
  name: "Aldersett",
  latitude: 49.6,
  longitude: -101.3,
  elevation: 560,
  timeZone: -6,
};

/** Its normals. */
export const NORMALS = readNormals(normalsText, "aldersett_normals.csv");

/** An invented year of it. */
export function sampleYear(seed = 1): ClimateYear {
  return yearFromNormals(NORMALS, ALDERSETT, seed);
}

/** A year with some series changed. */
export function withSeries(
  year: ClimateYear,
  names: readonly (keyof ClimateYear)[],
  change: (value: number, hour: number, series: Float64Array) => number,
): ClimateYear {
  const changed = names.map((name) => [name, (year[name] as Float64Array).map(change)]);
  return { ...year, ...Object.fromEntries(changed) };
}

/** The series of a year by name. */
export const SERIES = [
  "dryBulb",
  "relativeHumidity",
  "globalHorizontal",
  "directNormal",
  "diffuseHorizontal",
  "windSpeed",
  "pressure",
] as const;
