/** Heat put in and given back since New Year. @module */
import type { StoreYear } from "./types.ts";

/** Running totals of each hour, kWh since 1 January. */
export interface RunningTotals {
  /** kWh put in, hours in which more goes in than comes back */
  readonly heatIn: Float64Array;
  /** kWh given back, hours in which more comes back than goes in */
  readonly heatOut: Float64Array;
  /** kWh put in less given back */
  readonly difference: Float64Array;
}

/**
 * Running totals of heat in, heat back and their difference through the year.
 *
 * @param year hourly year of the store, W
 */
export function runningTotals(year: Pick<StoreYear, "sensible" | "latent">): RunningTotals {
  const total = (part: (heat: number) => number) => {
    let sum = 0;
    return year.sensible.map((value, hour) => sum += part((value + year.latent[hour]!) / 1000));
  };
  return {
    heatIn: total((heat) => Math.max(0, heat)),
    heatOut: total((heat) => Math.max(0, -heat)),
    difference: total((heat) => heat),
  };
}
