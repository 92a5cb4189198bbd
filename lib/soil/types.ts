/** What the soil chapter takes and gives. @module */
import type { Notice } from "../basics/mod.ts";

/** Texture class that picks the conductivity model's constants. */
export type SoilTexture =
  | "gravel"
  | "coarse sand"
  | "fine sand"
  | "silt"
  | "loam"
  | "clay"
  | "peat";

/** `soil` section of the study file, in SI. */
export interface SoilInputs {
  readonly texture: SoilTexture;
  /** kg/m³ of dry soil in place */
  readonly dryDensity: number;
  /** water by volume, m³/m³ */
  readonly moisture: number;
  /** quartz share of the solids, 0 to 1 */
  readonly quartz: number;
  /** measured conductivity that overrides the estimate, W/(m K); null where not measured */
  readonly measuredConductivity: number | null;
  /** depth of the highest water table below the surface, m; null where unknown */
  readonly waterTableDepth: number | null;
  /** typical depth of the winter snow, m */
  readonly snowDepth: number;
}

/** Thermal properties of one soil. */
export interface SoilProperties {
  /** W/(m K) */
  readonly conductivity: number;
  readonly frozenConductivity: number;
  /** J/(m³ K) */
  readonly heatCapacity: number;
  readonly frozenHeatCapacity: number;
  /** m²/s, unfrozen */
  readonly diffusivity: number;
  /** J/m³ released on freezing */
  readonly latentHeat: number;
  /** W/(m K), plausible low and high of the conductivity */
  readonly conductivityRange: readonly [number, number];
  readonly porosity: number;
  readonly saturation: number;
  /** K below 0 degC over which the soil water freezes */
  readonly freezingRange: number;
}

/** Annual wave T(z,t) = mean − amplitude·exp(−z/d)·cos(ω(t − minimumDay) − z/d). */
export interface AnnualWave {
  /** degC */
  readonly mean: number;
  /** K at the surface */
  readonly amplitude: number;
  /** day of the lowest surface temperature, 0 to 365 */
  readonly minimumDay: number;
  /** m²/s */
  readonly diffusivity: number;
}

/** Result of the soil chapter. */
export interface SoilResult {
  readonly properties: SoilProperties;
  readonly wave: AnnualWave;
  /** m, deepest 0 degC of the undisturbed ground; 0 where it does not freeze */
  readonly frostDepth: number;
  /** depths of the table below, m */
  readonly depths: readonly number[];
  /** temperature[month][depth], degC, monthly means of the undisturbed ground */
  readonly monthly: readonly (readonly number[])[];
  /** m, the study's tube depth (middle of the layers) */
  readonly tubeDepth: number;
  readonly temperatureAtTubeDepthMin: number;
  readonly temperatureAtTubeDepthMax: number;
  readonly notices: readonly Notice[];
}
