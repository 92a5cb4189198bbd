/** What the soil chapter takes and gives. @module */
import type { Notice } from "../basics/mod.ts";

export type { SoilInputs, SoilLayerInputs, SoilTexture } from "./fields.ts";

/** Thermal properties of one soil. */
export interface SoilProperties {
  /** W/(m K) */
  readonly conductivity: number;
  /** W/(m K), all water ice */
  readonly frozenConductivity: number;
  /** J/(m³ K) */
  readonly heatCapacity: number;
  /** J/(m³ K), all water ice */
  readonly frozenHeatCapacity: number;
  /** m²/s, unfrozen */
  readonly diffusivity: number;
  /** J/m³ released on freezing */
  readonly latentHeat: number;
  /** W/(m K), plausible low and high of the conductivity */
  readonly conductivityRange: readonly [number, number];
  /** share of the soil that is pores */
  readonly porosity: number;
  /** share of the pores filled with water */
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

/** Temperatures of the undisturbed ground by depth and day, for maps. */
export interface GroundField {
  /** depths of the series, m */
  readonly depths: readonly number[];
  /** degC at the end of each day, one series of 365 for each depth */
  readonly temperature: readonly Float64Array[];
}

/** The ground with one soil quantity changed. */
export interface SoilSensitivity {
  /** what was changed */
  readonly change: string;
  /** W/(m K) */
  readonly conductivity: number;
  /** m³/m³ */
  readonly moisture: number;
  /** m */
  readonly frostDepth: number;
  /** degC at the tube depth over the year */
  readonly meanAtTubeDepth: number;
  /** degC */
  readonly minAtTubeDepth: number;
  /** degC */
  readonly maxAtTubeDepth: number;
  /** true for ground kept clear of snow and grass */
  readonly cleared?: true;
}

/** How the two estimates of the undisturbed ground differ. */
export interface GroundDifference {
  /** K, column minus climate wave, mean of the year at tube depth */
  readonly mean: number;
  /** K, largest difference of monthly means at tube depth */
  readonly largest: number;
  /** m, frost depth of the climate wave, which knows no latent heat; null where it has no end */
  readonly waveFrostDepth: number | null;
  /** K, root mean square of column minus `SoilResult.wave`, 0.5 to 5 m deep */
  readonly waveFit: number;
}

/** Result of the soil chapter. */
export interface SoilResult {
  /** thermal properties of the soil */
  readonly properties: SoilProperties;
  /** the undisturbed ground for the other chapters: wave fitted to the column below 0.5 m */
  readonly wave: AnnualWave;
  /** first estimate: wave fitted to the air temperature with the snow rule alone */
  readonly climateWave: AnnualWave;
  /** m, deepest 0 degC of the undisturbed ground; 0 where it does not freeze */
  readonly frostDepth: number;
  /** depths of the table below, m */
  readonly depths: readonly number[];
  /** temperature[month][depth], degC, monthly means of the undisturbed ground */
  readonly monthly: readonly (readonly number[])[];
  /** the same by the climate wave, degC */
  readonly waveMonthly: readonly (readonly number[])[];
  /** m, the study's tube depth (middle of the layers) */
  readonly tubeDepth: number;
  /** degC, coldest day of the year at tube depth */
  readonly temperatureAtTubeDepthMin: number;
  /** degC, warmest day */
  readonly temperatureAtTubeDepthMax: number;
  /** depth and day map of the column */
  readonly field: GroundField;
  /** m of snow on each day, as the column has it */
  readonly snowDepth: Float64Array;
  /** column against climate wave */
  readonly difference: GroundDifference;
  /** the ground with conductivity and moisture changed, first row unchanged */
  readonly sensitivity: readonly SoilSensitivity[];
  /** share of the year's heat that the column's balance leaves over */
  readonly balanceResidual: number;
  /** years the column ran until the year repeated */
  readonly spinUpYears: number;
  /** plausibility and cautions */
  readonly notices: readonly Notice[];
}
