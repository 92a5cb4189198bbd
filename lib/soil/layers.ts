/** Layers of the column from the study's soil. @module */
import type { SoilLayer } from "./column.ts";
import { soilProperties } from "./properties.ts";
import type { SoilMake } from "./properties.ts";
import { findSoil } from "./table.ts";
import type { SoilInputs, SoilProperties } from "./types.ts";

/** m of soil above a water table so shallow that none is left dry. */
const THINNEST_LAYER = 0.05;

/** The soil with its pores full of water; a measured conductivity goes up as the models say. */
export function saturatedSoil(soil: SoilMake): SoilProperties {
  const porosity = 1 - soil.dryDensity / findSoil(soil.texture).solidDensity;
  return soilWithMoisture(soil, porosity);
}

/**
 * The soil at another moisture; a measured conductivity is scaled by the ratio of the models.
 *
 * @param moisture m³/m³, at most the porosity
 */
export function soilWithMoisture(soil: SoilMake, moisture: number): SoilProperties {
  const estimate = (water: number) =>
    soilProperties({ ...soil, moisture: water, measuredConductivity: null });
  const measured = soil.measuredConductivity === null
    ? null
    : soil.measuredConductivity * estimate(moisture).conductivity /
      estimate(soil.moisture).conductivity;
  return soilProperties({ ...soil, moisture, measuredConductivity: measured });
}

/** Layers of a uniform soil, saturated below the water table where its depth is known. */
export function studyLayers(
  inputs: SoilInputs,
  properties: SoilProperties = soilProperties(inputs),
): SoilLayer[] {
  const table = inputs.waterTableDepth;
  if (table === null) return [{ thickness: Infinity, properties }];
  const wet = { thickness: Infinity, properties: saturatedSoil(inputs) };
  return table < THINNEST_LAYER ? [wet] : [{ thickness: table, properties }, wet];
}
