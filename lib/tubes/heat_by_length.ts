/** Heat of one tube by its length in the soil of the study. @module */
import type { AirProperties } from "../air/mod.ts";
import { DAY } from "../basics/mod.ts";
import { type LengthRow, marginalHeat } from "./marginal.ts";
import { soilRadius } from "./periodic.ts";
import type { TubesInputs, TubesResult } from "./types.ts";

/** K, amplitude of the inlet air about the soil's mean; common practice, no source. */
export const INLET_SWING = 8;

/** One length in one wave. */
export interface HeatLengthRow extends LengthRow {
  /** kWh that the next metre brings on each day of the wave's charging half */
  readonly marginalHeatPerDay: number;
}

/** Heat by length for one period. */
export interface HeatByLength {
  /** days of one whole wave */
  readonly days: number;
  /** rows of rising length */
  readonly rows: readonly HeatLengthRow[];
}

/** A field of tubes in its soil. */
export interface TubesInSoil {
  /** `tubes` section of the study */
  readonly inputs: TubesInputs;
  /** result of the tubes chapter */
  readonly tubes: TubesResult;
  /** W/(m K) and J/(m³ K) */
  readonly soil: { readonly conductivity: number; readonly heatCapacity: number };
  /** properties of the air in the tubes */
  readonly air: AirProperties;
}

/**
 * Heat and marginal heat of one tube by length, up to twice the study's, for waves of a day and of
 * ten days, with the soil that belongs to the tube in the field.
 *
 * @param field tubes, soil and air
 */
export function heatByLength(field: TubesInSoil): HeatByLength[] {
  const { tubes, soil, air } = field;
  const { spacing, layers, layerSpacing, extraLosses } = field.inputs;
  const height = layers > 1 ? layerSpacing : spacing;
  const lengths = Array.from({ length: 24 }, (_, index) => (index + 1) * tubes.length / 12);
  return [1, 10].map((days) => ({
    days,
    rows: marginalHeat({
      product: tubes.product,
      soil: { ...soil, outerRadius: soilRadius(spacing, height), outside: "adiabatic" },
      airFlow: tubes.flowPerTube,
      air,
      extraLosses,
      swing: INLET_SWING,
      period: days * DAY,
    }, lengths).map((row) => ({
      ...row,
      marginalHeatPerDay: row.marginalHeat / Math.max(1, days / 2),
    })),
  }));
}
