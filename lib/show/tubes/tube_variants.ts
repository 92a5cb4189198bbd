/** Tubes of other lengths in the study's soil. @module */
import { airProperties } from "../../air/mod.ts";
import { DAY } from "../../basics/mod.ts";
import type { SoilResult } from "../../soil/mod.ts";
import { DESIGN_AIR_TEMPERATURE, meanPressure, type Study } from "../../study/mod.ts";
import { type LengthRow, marginalHeat, soilRadius, type TubesResult } from "../../tubes/mod.ts";

/** K, amplitude of the inlet air about the soil's mean; common practice, no source. */
export const INLET_SWING = 8;

/** Heat by length for one period. */
export interface LengthStudy {
  /** days of one whole wave */
  readonly days: number;
  /** rows of rising length */
  readonly rows: readonly LengthRow[];
}

/**
 * Heat and marginal heat of one tube by length, for waves of a day and of ten days, with the soil
 * that belongs to the tube in the field.
 */
export function tubeHeatByLength(
  study: Study,
  soil: SoilResult,
  tubes: TubesResult,
): LengthStudy[] {
  const { conductivity, heatCapacity } = soil.properties;
  const { spacing, layers, layerSpacing, extraLosses } = study.tubes;
  const height = layers > 1 ? layerSpacing : spacing;
  const lengths = Array.from({ length: 24 }, (_, index) => (index + 1) * tubes.length / 12);
  return [1, 10].map((days) => ({
    days,
    rows: marginalHeat({
      product: tubes.product,
      soil: {
        conductivity,
        heatCapacity,
        outerRadius: soilRadius(spacing, height),
        outside: "adiabatic",
      },
      airFlow: tubes.flowPerTube,
      air: airProperties(DESIGN_AIR_TEMPERATURE, meanPressure(study)),
      extraLosses,
      swing: INLET_SWING,
      period: days * DAY,
    }, lengths),
  }));
}
