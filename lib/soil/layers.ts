/** Layers of the column from the study's soil. @module */
import type { SoilLayer } from "./column.ts";
import { soilProperties, withConductivity } from "./properties.ts";
import type { SoilMake } from "./properties.ts";
import { findSoil } from "./table.ts";
import type { SoilInputs, SoilLayerInputs, SoilProperties } from "./types.ts";

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
  return withConductivity({ ...soil, moisture }, measured);
}

/**
 * Layers of the column: those the study lists, top first, then the soil of the section to the
 * bottom; each saturated below the water table where its depth is known.
 *
 * @param inputs `soil` section
 * @param propertiesOf thermal properties of one soil above the water table
 */
export function studyLayers(
  inputs: SoilInputs,
  propertiesOf: (soil: SoilMake) => SoilProperties = soilProperties,
): SoilLayer[] {
  const { frozenConductivity } = inputs;
  const makes = [
    ...(inputs.layers ?? []).map((layer) => ({ ...layer, frozenConductivity })),
    { ...inputs, thickness: Infinity },
  ];
  const water = inputs.waterTableDepth ?? Infinity;
  let top = 0;
  return makes.flatMap((make) => {
    const { thickness } = make;
    const aboveWater = Math.min(thickness, Math.max(0, water - top));
    top += thickness;
    const dry = { thickness: aboveWater, properties: propertiesOf(make) };
    if (aboveWater === thickness) return [dry];
    const wet = { thickness: thickness - aboveWater, properties: saturatedSoil(make) };
    return aboveWater < THINNEST_LAYER ? [{ ...wet, thickness }] : [dry, wet];
  });
}

/** The soil at a depth: the layer listed there, or null where it is the soil of the section. */
export function listedLayerAt(inputs: SoilInputs, depth: number): SoilLayerInputs | null {
  let bottom = 0;
  return inputs.layers?.find((layer) => (bottom += layer.thickness) > depth) ?? null;
}
