/** Heat into and out of the tube walls day by day. @module */
import type { StoreYear } from "./types.ts";

/** Heat of one day, kWh; what is given back is counted positive too. */
export interface HeatDay {
  /** day of the year from 0 */
  readonly day: number;
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
}

/**
 * Heat into and out of the tube walls by day. A day may start later than at midnight, so that a
 * sunny day and the night after it count as one; the last one then runs on into January.
 *
 * @param year hourly year of the store, W
 * @param startHour hour of the clock at which a day starts
 */
export function heatByDay(
  year: Pick<
    StoreYear,
    "sensibleIn" | "latentIn" | "sensibleOut" | "latentOut" | "fanPower"
  >,
  startHour = 0,
): HeatDay[] {
  const hours = year.fanPower.length;
  return Array.from({ length: Math.floor(hours / 24) }, (_, day) => {
    const sum = (series: Float64Array) => {
      let total = 0;
      for (let hour = 0; hour < 24; hour++) {
        total += series[(day * 24 + startHour + hour) % hours]! / 1000;
      }
      return total;
    };
    return {
      day,
      sensibleIn: sum(year.sensibleIn),
      latentIn: sum(year.latentIn),
      sensibleOut: sum(year.sensibleOut),
      latentOut: sum(year.latentOut),
      fan: sum(year.fanPower),
    };
  });
}
