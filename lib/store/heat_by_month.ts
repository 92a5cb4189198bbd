/** Heat into and out of the tube walls month by month. @module */
import { monthlyHeat, monthlySums } from "../basics/mod.ts";
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
 * Monthly sums of heat charged and discharged. What evaporates while the fan charges is taken off
 * the latent heat put in, and what condenses while it discharges off that given back.
 *
 * @param year hourly year of the store
 */
export function heatByMonth(year: StoreYear): HeatMonth[] {
  const sensibleIn = monthlyHeat(year.sensibleIn);
  const sensibleOut = monthlyHeat(year.sensibleOut);
  const latentIn = monthlyHeat(year.latentIn);
  const latentOut = monthlyHeat(year.latentOut);
  const fan = monthlyHeat(year.fanPower);
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
