/** A year of weather as a table that only its columns file explains, for tests of a page's own weather. @module */
import type { ClimateYear } from "winterground/climate/types.ts";

/** Text of a columns file: degF, km/h and hPa, so that units are read too. */
export const COLUMNS = `delimiter: semicolon
decimal: comma
missing: ["-"]
columns:
  dryBulb: {column: T, unit: degF}
  relativeHumidity: {column: RH, unit: "%"}
  globalHorizontal: {column: sun, unit: kJ/m2}
  windSpeed: {column: wind, unit: km/h}
  pressure: {column: p, unit: hPa}
`;

/** The table: a given year two kelvin colder, one wind missing. */
export function tableOf(year: ClimateYear): string {
  const comma = (value: number) => value.toFixed(2).replace(".", ",");
  const rows = Array.from(year.dryBulb, (temperature, hour) =>
    [
      comma((temperature - 2) * 1.8 + 32),
      comma(100 * year.relativeHumidity[hour]!),
      comma(3.6 * year.globalHorizontal[hour]!),
      hour === 500 ? "-" : comma(3.6 * year.windSpeed[hour]!),
      comma(year.pressure[hour]! / 100),
    ].join(";"));
  return `T;RH;sun;wind;p\n${rows.join("\n")}\n`;
}
