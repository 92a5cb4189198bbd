/** Helpers of the made-up results that charts are drawn from in tests; no claim about any real house. */

import type { StoreYear } from "../../lib/store/types.ts";

/** Fields the charts read; the others of the type may be missing. */
export function made<T>(fields: object): T {
  return fields as T;
}

/** A year of hourly values from a formula. */
export function hourly(value: (hour: number) => number): Float64Array {
  return Float64Array.from({ length: 8760 }, (_, hour) => value(hour));
}

/** −1 in midwinter to 1 in midsummer. */
export const season = (hour: number): number => -Math.cos(2 * Math.PI * hour / 8760);

/** 0 at night to 1 at noon. */
export const daytime = (hour: number): number =>
  Math.max(0, -Math.cos(2 * Math.PI * (hour + 0.5) / 24));

/** Heat of a store's year by hour, W, and what of it is charged and discharged, by its sign. */
export function heatSeries(
  sensible: Float64Array,
  latent: Float64Array,
): Pick<
  StoreYear,
  "sensible" | "latent" | "sensibleIn" | "latentIn" | "sensibleOut" | "latentOut"
> {
  const part = (series: Float64Array, sign: 1 | -1) =>
    series.map((value) => Math.max(0, sign * value));
  return {
    sensible,
    latent,
    sensibleIn: part(sensible, 1),
    latentIn: part(latent, 1),
    sensibleOut: part(sensible, -1),
    latentOut: part(latent, -1),
  };
}
