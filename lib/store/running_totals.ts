/** Heat put in and given back since New Year. @module */
import type { StoreYear } from "./types.ts";

/** Running totals of each hour, kWh since 1 January. */
export interface RunningTotals {
  /** kWh put in while charging */
  readonly heatIn: Float64Array;
  /** kWh given back while discharging */
  readonly heatOut: Float64Array;
  /** kWh put in less given back */
  readonly difference: Float64Array;
}

/**
 * Running totals of heat in, heat back and their difference through the year.
 *
 * @param year hourly year of the store, W
 */
export function runningTotals(
  year: Pick<StoreYear, "sensibleIn" | "latentIn" | "sensibleOut" | "latentOut">,
): RunningTotals {
  const total = (sensible: Float64Array, latent: Float64Array) => {
    let sum = 0;
    return sensible.map((value, hour) => sum += (value + latent[hour]!) / 1000);
  };
  const heatIn = total(year.sensibleIn, year.latentIn);
  const heatOut = total(year.sensibleOut, year.latentOut);
  return {
    heatIn,
    heatOut,
    difference: heatIn.map((value, hour) => value - heatOut[hour]!),
  };
}
