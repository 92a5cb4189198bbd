/** Heat into and out of the tube walls month by month. @module */
import { monthlySums } from "../basics/mod.ts";
import type { StoreYear } from "./types.ts";

/** Heat of one month, kWh; what is given back is counted positive too. */
export interface HeatMonth {
  /** 0 to 11 */
  readonly month: number;
  /** sensible heat put in, kWh */
  readonly sensibleIn: number;
  /** latent heat put in, kWh */
  readonly latentIn: number;
  /** sensible heat given back, kWh */
  readonly sensibleOut: number;
  /** latent heat given back, kWh */
  readonly latentOut: number;
  /** kWh of fan energy */
  readonly fan: number;
  /** kg condensed in the tubes, less what evaporated */
  readonly condensate: number;
}

/**
 * Monthly sums of heat into and out of the tube walls; hours that put in sensible and give back
 * latent heat, or the other way round, count on both sides.
 *
 * @param year hourly year of the store
 */
export function heatByMonth(year: StoreYear): HeatMonth[] {
  const part = (series: Float64Array, sign: 1 | -1) =>
    monthlySums(series.map((value) => Math.max(0, sign * value) / 1000));
  const sensibleIn = part(year.sensible, 1);
  const sensibleOut = part(year.sensible, -1);
  const latentIn = part(year.latent, 1);
  const latentOut = part(year.latent, -1);
  const fan = part(year.fanPower, 1);
  return monthlySums(year.condensate).map((condensate, month) => ({
    month,
    sensibleIn: sensibleIn[month]!,
    latentIn: latentIn[month]!,
    sensibleOut: sensibleOut[month]!,
    latentOut: latentOut[month]!,
    fan: fan[month]!,
    condensate,
  }));
}
