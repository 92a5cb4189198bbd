/** Sensors that stand still, jump or speak another unit. @module */
import { showBoth } from "../../units/mod.ts";
import { max, mean } from "d3-array";
import { standardPressure } from "../../air/mod.ts";
import { describeHour, HOURS_PER_YEAR } from "../../basics/mod.ts";
import { list } from "./quality_radiation.ts";
import type { ClimateYear } from "../types.ts";

/** Hours without any change that are worth a word. Common practice, no source. */
const STILL_HOURS = 36;
/** A single hour this far from both its neighbours is a jump, K. Common practice, no source. */
const JUMP = 10;
/** The same for relative humidity, 0 to 1. */
const HUMIDITY_JUMP = 0.5;
/** Departure from the standard atmosphere that is worth a word; weather makes up to 6 %. */
const PRESSURE_DEPARTURE = 0.06;

/**
 * Faults of thermometer, humidity sensor, anemometer and barometer.
 *
 * @param year the climate
 * @returns a line for each kind of fault
 */
export function sensorFaults(year: ClimateYear): string[] {
  return [
    ...still(year.dryBulb, "Dry-bulb temperature", () => true),
    ...still(year.relativeHumidity, "Relative humidity", (value) => value < 0.97),
    ...still(year.windSpeed, "Wind speed", (value) => value > 0.5),
    ...still(year.globalHorizontal, "Global radiation", (value) => value > 5, 5),
    ...jumps(year.dryBulb, "Dry-bulb temperature", JUMP),
    ...jumps(year.relativeHumidity, "Relative humidity", HUMIDITY_JUMP),
    ...pressure(year),
    ...units(year),
  ];
}

/** Runs of one and the same value; a series that never changes is a default and no fault. */
function still(
  series: Float64Array,
  words: string,
  counts: (value: number) => boolean,
  hours = STILL_HOURS,
): string[] {
  let [run, longest, end] = [1, 1, 0];
  for (let hour = 1; hour < series.length; hour++) {
    run = series[hour] === series[hour - 1] && counts(series[hour]!) ? run + 1 : 1;
    if (run > longest) [longest, end] = [run, hour];
  }
  if (longest < hours || longest >= HOURS_PER_YEAR) return [];
  return [
    `${words} does not change for ${longest} hours from ${
      describeHour(end - longest + 1)
    }: the sensor may ` +
    "have been stuck",
  ];
}

function jumps(series: Float64Array, words: string, least: number): string[] {
  const hours: number[] = [];
  for (let hour = 1; hour + 1 < series.length; hour++) {
    const before = series[hour]! - series[hour - 1]!;
    const after = series[hour]! - series[hour + 1]!;
    if (before * after > 0 && Math.min(Math.abs(before), Math.abs(after)) > least) hours.push(hour);
  }
  return hours.length === 0 ? [] : [`${words} has spikes in ${list(hours)}`];
}

function pressure(year: ClimateYear): string[] {
  const standard = standardPressure(year.place.elevation);
  const usual = mean(year.pressure)!;
  if (Math.abs(usual / standard - 1) > PRESSURE_DEPARTURE) {
    return [
      `Air pressure is ${Math.round(usual / 100)} hPa on average, where ${
        Math.round(standard / 100)
      } hPa ` +
      `is usual at ${year.place.elevation} m: it may be reduced to sea level, or the elevation is wrong`,
    ];
  }
  const odd = [...year.pressure.keys()].filter((hour) =>
    Math.abs(year.pressure[hour]! / usual - 1) > PRESSURE_DEPARTURE
  );
  return odd.length === 0 ? [] : [`Air pressure is implausible in ${list(odd)}`];
}

function units(year: ClimateYear): string[] {
  const faults: string[] = [];
  const highest = (series: Float64Array) => max(series)!;
  if (highest(year.relativeHumidity) <= 0.02) {
    faults.push("Relative humidity never exceeds 2 %: it may be given as a fraction, not in %");
  }
  const wind = mean(year.windSpeed)!;
  if (wind > 12) {
    faults.push(
      `Wind speed is ${showBoth(wind, "windSpeed")} on average: its unit may be km/h or mph`,
    );
  }
  return faults;
}
