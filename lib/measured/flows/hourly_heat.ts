/** Heat that the air leaves in the store hour by hour, and how it would move with each sensor. @module */
import { HOUR } from "../../basics/mod.ts";
import { airFlowHeat } from "./air_heat.ts";
import { HEAT_READINGS, type HeatReadings } from "./readings.ts";

const COUNT = HEAT_READINGS.length;
/** steps over which slopes are taken, in the SI units of the readings: K, 1, K, 1, m³/s, W */
const NUDGES = [0.01, 1e-3, 0.01, 1e-3, 1e-3, 1] as const;
/** share of the greatest power from which on a fan runs */
const RUNNING = 0.05;
/** least share of an hour's steps that must be there for the hour to count */
const LEAST_SHARE = 0.5;

/** Name of a flow. */
export type LoggedFlow =
  | "heatIn"
  | "heatOut"
  | "latentIn"
  | "latentOut"
  | "fanPower"
  | "airFlow";

/** What is summed up, in the order of every list of flows here. */
export const LOGGED_FLOWS: readonly LoggedFlow[] = [
  "heatIn",
  "heatOut",
  "latentIn",
  "latentOut",
  "fanPower",
  "airFlow",
];

/** Means of each hour; NaN where less than half of it was logged. */
export interface HourlyHeat {
  /**
   * W put in and given back, the latent part of each, W of electricity, and m³/s (0 where the fan
   * rests)
   */
  readonly flows: Readonly<Record<LoggedFlow, Float64Array>>;
  /**
   * what each would rise by for one SI unit more on each reading in the order of `HEAT_READINGS`:
   * `slopes[flow][hour·6 + reading]`, W or m³/s for each K, 1, m³/s or W
   */
  readonly slopes: Readonly<Record<LoggedFlow, Float64Array>>;
  /** share of each hour in which the fan ran, 0 to 1 */
  readonly running: Float64Array;
}

/** W from which on the fan counts as running. */
function runningPower(power: Float64Array): number {
  let most = 0;
  for (const value of power) if (value > most) most = value;
  return Math.max(1, RUNNING * most);
}

/** Values of one step in the order of `LOGGED_FLOWS`. */
function stepFlows(values: readonly number[], pressure: number, fanHeats: boolean): number[] {
  const [air, , latent] = airFlowHeat(values, pressure) as [number, number, number, number];
  const power = values[5]!;
  const heat = air + (fanHeats ? power : 0);
  return heat > 0
    ? [heat, 0, latent, 0, power, values[4]!]
    : [0, -heat, 0, -latent, power, values[4]!];
}

/** The same kept on the side, in or out, on which the best values stand. */
function nudged(
  values: readonly number[],
  reading: number,
  charging: boolean,
  pressure: number,
  fanHeats: boolean,
): number[] {
  const moved = values.map((value, k) => k === reading ? value + NUDGES[reading]! : value);
  const [air, , latent] = airFlowHeat(moved, pressure) as [number, number, number, number];
  const heat = air + (fanHeats ? moved[5]! : 0);
  return charging
    ? [heat, 0, latent, 0, moved[5]!, moved[4]!]
    : [0, -heat, 0, -latent, moved[5]!, moved[4]!];
}

/**
 * Heat by hour from the steps of a log. A step is charging where the air leaves heat. Where the fan
 * stands between the probes its power goes into the store with the air's heat.
 *
 * @param given readings, s of a step, Pa of each step, and whether the fan stands between the probes
 */
export function hourlyHeat(given: {
  readonly readings: HeatReadings["readings"];
  readonly step: number;
  readonly pressure: number;
  readonly fanHeats: boolean;
}): HourlyHeat {
  const { readings, step, pressure, fanHeats } = given;
  const perHour = Math.max(1, Math.round(HOUR / step));
  const power = readings[5]!.values;
  const hours = Math.floor(power.length / perHour);
  const series = (width = 1) =>
    Object.fromEntries(
      LOGGED_FLOWS.map((name) => [name, new Float64Array(hours * width)]),
    ) as Record<LoggedFlow, Float64Array>;
  const [flows, slopes] = [series(), series(COUNT)];
  const running = new Float64Array(hours);
  const least = runningPower(power);
  for (let hour = 0; hour < hours; hour++) {
    let [there, ran] = [0, 0];
    for (let at = hour * perHour; at < (hour + 1) * perHour; at++) {
      if (Number.isNaN(power[at]!)) continue;
      if (power[at]! < least) {
        there++;
        continue;
      }
      const values = readings.map((reading) => reading.values[at]!);
      if (values.some(Number.isNaN)) continue;
      there++;
      ran++;
      const best = stepFlows(values, pressure, fanHeats);
      LOGGED_FLOWS.forEach((name, k) => flows[name][hour]! += best[k]!);
      for (let reading = 0; reading < COUNT; reading++) {
        const other = nudged(values, reading, best[0]! > 0, pressure, fanHeats);
        LOGGED_FLOWS.forEach((name, k) =>
          slopes[name][hour * COUNT + reading]! += (other[k]! - best[k]!) / NUDGES[reading]!
        );
      }
    }
    const share = there / perHour;
    running[hour] = share < LEAST_SHARE ? NaN : ran / there;
    for (const name of LOGGED_FLOWS) {
      flows[name][hour] = share < LEAST_SHARE ? NaN : flows[name][hour]! / there;
      for (let reading = 0; reading < COUNT; reading++) {
        const place = hour * COUNT + reading;
        slopes[name][place] = share < LEAST_SHARE ? 0 : slopes[name][place]! / there;
      }
    }
  }
  return { flows, slopes, running };
}
