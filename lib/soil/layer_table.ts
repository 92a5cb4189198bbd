/** Soils of a study from the surface down. @module */
import { soilProperties } from "./properties.ts";
import type { SoilInputs, SoilTexture } from "./types.ts";

/** One soil and where it lies. */
export interface SoilLayerRow {
  /** row of `data/soils/soils.csv` */
  readonly texture: SoilTexture;
  /** m below the surface */
  readonly top: number;
  /** m below the surface; Infinity for the soil of the section, which goes on to the bottom */
  readonly bottom: number;
  /** kg/m³ of dry soil in place */
  readonly dryDensity: number;
  /** water by volume, m³/m³ */
  readonly moisture: number;
  /** W/(m K) */
  readonly conductivity: number;
  /** W/(m K), plausible low and high */
  readonly conductivityRange: readonly [number, number];
  /** true where the study gives a measured conductivity */
  readonly measured: boolean;
}

/**
 * Soils of a study from the surface down, each with the plausible range of its conductivity, above
 * the water table.
 *
 * @param inputs `soil` section of the study
 */
export function soilLayerRows(inputs: SoilInputs): SoilLayerRow[] {
  let bottom = 0;
  return [...inputs.layers ?? [], { ...inputs, thickness: Infinity }].map((make) => {
    const { conductivity, conductivityRange } = soilProperties(make);
    const { texture, dryDensity, moisture } = make;
    const top = bottom;
    bottom += make.thickness;
    const measured = make.measuredConductivity !== null;
    return {
      texture,
      top,
      bottom,
      dryDensity,
      moisture,
      conductivity,
      conductivityRange,
      measured,
    };
  });
}
