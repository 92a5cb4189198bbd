/** The forecast of the made-up winter: its own weather, as one foresees it. @module */
import { HOURS_PER_YEAR } from "../../basics/mod.ts";
import type { ClimateYear } from "../../climate/types.ts";
import { normalStream } from "./dice.ts";

/** number of hours of the forecast */
const HOURS = 7 * 24;
/** K of the first day, and of each day more, by which a forecast is off (common practice, no source) */
const [FIRST, LATER] = [1, 0.4];
/** hours in which an error of a forecast forgets itself */
const LASTS = 24;

/** A course of errors of size one that forget themselves within a day. */
function course(seed: number, name: string): number[] {
  const draw = normalStream(seed, `forecast of ${name}`);
  const kept = Math.exp(-1 / LASTS);
  let now = draw();
  return Array.from({ length: HOURS }, () => now = kept * now + Math.sqrt(1 - kept ** 2) * draw());
}

/**
 * Writes the forecast.
 *
 * @param climate true weather
 * @param start hour of the year at which it begins, from 0
 * @param stamp ISO day and hour of that moment on the house's standard time, such as "2026-01-13T00:00"
 * @param seed whole number that its errors hang on
 */
export function forecastFile(
  climate: ClimateYear,
  start: number,
  stamp: string,
  seed: number,
): string {
  const [warmer, damper, clearer, windier] = ["warmth", "damp", "sun", "wind"].map((name) =>
    course(seed, name)
  ) as [number[], number[], number[], number[]];
  const begin = Date.parse(`${stamp}Z`);
  const rows = Array.from({ length: HOURS }, (_, k) => {
    const hour = (start + k) % HOURS_PER_YEAR;
    const size = FIRST + LATER * Math.floor(k / 24);
    const time = new Date(begin + 3600_000 * k).toISOString().slice(0, 16).replace("T", " ");
    const within = (value: number) => Math.min(100, Math.max(10, value));
    return [
      time,
      (climate.dryBulb[hour]! + size * warmer[k]!).toFixed(1),
      within(100 * climate.relativeHumidity[hour]! + 5 * size * damper[k]!).toFixed(0),
      Math.max(0, climate.globalHorizontal[hour]! * (1 + 0.1 * size * clearer[k]!)).toFixed(0),
      Math.max(0.3, climate.windSpeed[hour]! + 0.7 * size * windier[k]!).toFixed(1),
    ].join(",");
  });
  return ["time,temperature (degC),humidity (%),sun (W/m2),wind (m/s)", ...rows, ""].join("\n");
}
