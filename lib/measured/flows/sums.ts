/** Sums of logged heat over any hours, with bands from the sensors' shared errors. @module */
import { HOUR, kilowattHours } from "../../basics/mod.ts";
import { propagate, type Uncertain } from "../uncertainty/propagate.ts";
import type { HourlyHeat, LoggedFlow } from "./hourly_heat.ts";
import { HEAT_READINGS } from "./readings.ts";

/** standard deviations to either side that hold 95 % of a normal distribution */
const NORMAL_95 = 1.959963985;
const COUNT = HEAT_READINGS.length;

/** A value with the range that holds the truth in 95 of 100 cases, all in one unit. */
export interface Banded {
  /** best value, in the unit of what it stands for */
  readonly value: number;
  /** lower end of the range, same unit */
  readonly low: number;
  /** upper end of the range, same unit */
  readonly high: number;
}

/** Flows that are heat or electricity, summed in this order. */
const SUMMED = ["heatIn", "heatOut", "latentIn", "latentOut", "fanPower"] as const;

/** Sums over some hours of a log. */
export interface HeatSums {
  /** number of hours that were logged */
  readonly hours: number;
  /** kWh put in */
  readonly heatIn: Banded;
  /** kWh given back */
  readonly heatOut: Banded;
  /** kWh of latent heat put in */
  readonly latentIn: Banded;
  /** kWh of latent heat given back */
  readonly latentOut: Banded;
  /** kWh of electricity of the fans */
  readonly fanEnergy: Banded;
  /** ratio of heat given back to heat put in; null where none was put in */
  readonly recovery: Banded | null;
  /** ratio of heat given back to fan energy; null where the fan never ran */
  readonly cop: Banded | null;
}

/** A value of an uncertain list with its band. */
export function banded({ values, uncertainties }: Uncertain, place: number): Banded {
  const [value, half] = [values[place]!, NORMAL_95 * uncertainties[place]!];
  return { value, low: value - half, high: value + half };
}

/** kWh of a flow over some hours, and what it would rise by for one unit more on each reading. */
function summed(heat: HourlyHeat, name: LoggedFlow, hours: readonly number[]) {
  let joule = 0;
  const slopes = new Array<number>(COUNT).fill(0);
  for (const hour of hours) {
    const value = heat.flows[name][hour]!;
    if (Number.isNaN(value)) continue;
    joule += value * HOUR;
    for (let k = 0; k < COUNT; k++) slopes[k]! += heat.slopes[name][hour * COUNT + k]! * HOUR;
  }
  return { value: kilowattHours(joule), slopes: slopes.map(kilowattHours) };
}

/**
 * Sums over hours, with bands by the law of propagation (GUM [gum-2008] 5.2.2): a sensor that is off
 * is off for the whole season, so its error adds up and does not average out.
 *
 * @param heat by hour
 * @param covariance of the readings' shared errors, in their SI units
 * @param hours which, as places in the hourly series
 */
export function heatSums(
  heat: HourlyHeat,
  covariance: readonly (readonly number[])[],
  hours: readonly number[],
): HeatSums {
  const sums = SUMMED.map((name) => summed(heat, name, hours));
  const zero = new Array<number>(COUNT).fill(0);
  const at = (errors: readonly number[]) =>
    sums.map(({ value, slopes }) => slopes.reduce((sum, s, k) => sum + s * errors[k]!, value));
  const flows = propagate({ values: zero, covariance }, at);
  const [heatIn, heatOut, , , energy] = flows.values as [number, number, number, number, number];
  const ratio = (a: number, b: number) =>
    banded(
      propagate({ values: zero, covariance }, (errors) => {
        const moved = at(errors);
        return [moved[a]! / moved[b]!];
      }),
      0,
    );
  return {
    hours: hours.filter((hour) => !Number.isNaN(heat.flows.heatIn[hour]!)).length,
    heatIn: banded(flows, 0),
    heatOut: banded(flows, 1),
    latentIn: banded(flows, 2),
    latentOut: banded(flows, 3),
    fanEnergy: banded(flows, 4),
    recovery: heatIn > 0 ? ratio(1, 0) : null,
    cop: energy > 0 && heatOut >= 0 ? ratio(1, 4) : null,
  };
}
