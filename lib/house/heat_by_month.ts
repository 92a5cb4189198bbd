/** Heat into and out of the house month by month. @module */
import { monthlySums } from "../basics/mod.ts";
import type { HouseYear } from "./types.ts";

/** Heat of one month, kWh; positive warms the house. */
export interface HeatMonth {
  /** 0 to 11 */
  readonly month: number;
  /** kWh from the sun */
  readonly solar: number;
  /** kWh from the heater */
  readonly heater: number;
  /** kWh from the floor soil, negative where it takes */
  readonly floor: number;
  /** kWh through glazing */
  readonly glazing: number;
  /** kWh through walls and roofs that let no light in */
  readonly opaque: number;
  /** kWh with air through the cracks */
  readonly leakage: number;
  /** kWh with air through the vents */
  readonly vent: number;
  /** kWh turned into vapour (negative) */
  readonly evaporation: number;
}

/**
 * Heat of each month by part.
 *
 * @param year hourly year of the house, W
 */
export function heatByMonth(year: HouseYear): HeatMonth[] {
  const part = (series: Float64Array) => monthlySums(series).map((sum) => sum / 1000);
  const parts = {
    solar: part(year.solar),
    heater: part(year.heater),
    floor: part(year.floor),
    glazing: part(year.glazing),
    opaque: part(year.opaque),
    leakage: part(year.leakage),
    vent: part(year.vent),
    evaporation: part(year.evaporation),
  };
  return Array.from({ length: 12 }, (_, month) => ({
    month,
    solar: parts.solar[month]!,
    heater: parts.heater[month]!,
    floor: parts.floor[month]!,
    glazing: parts.glazing[month]!,
    opaque: parts.opaque[month]!,
    leakage: parts.leakage[month]!,
    vent: parts.vent[month]!,
    evaporation: parts.evaporation[month]!,
  }));
}
