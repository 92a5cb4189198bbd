/** What a march of the air takes and gives. @module */
import type { TubeCoupling } from "./coupling.ts";
import type { SaturationTable } from "./saturation.ts";
import type { TubeField } from "./tube_field.ts";

/** What the air meets on its way. Slice-wise arrays are slice·tubes + tube. */
export interface MarchInput {
  readonly field: TubeField;
  readonly saturation: SaturationTable;
  /** degC, mean of each block over the step without tube heat; first lane of the field */
  readonly block: Float64Array;
  readonly coupling: TubeCoupling;
  /** degC and kg/kg entering every tube */
  readonly temperature: number;
  readonly ratio: number;
  /** the air enters at the last slice */
  readonly reversed: boolean;
  /** kg of water on the wall of each segment */
  readonly water: Float64Array;
  /** s */
  readonly seconds: number;
}

/** What the march leaves behind; buffers are reused. */
export interface MarchOutput {
  /** W/m into the soil by slice and tube, sensible + latent */
  readonly heat: Float64Array;
  /** W/m of it that is latent */
  readonly latentHeat: Float64Array;
  /**
   * W/(m K) by slice and tube: latent heat over wall temperature less dew point, 0 where dry; not
   * worked out in a march that is asked for its slopes
   */
  readonly latentSlope: Float64Array;
  /** W: Σ ṁc (T_out − T_in) of all modelled tubes: heat to the air, W */
  toAir: number;
  /** W into the walls, latent */
  latent: number;
  /** kg/s of vapour added to the air (negative when it condenses) */
  vapour: number;
  /** degC and kg/kg, mixed outlet */
  outletTemperature: number;
  outletRatio: number;
}

/** What the air does for each kelvin and each kg/kg more at the entrance, all modelled tubes. */
export interface MarchSlopes {
  /** W of toAir for each K and each kg/kg */
  heatByTemperature: number;
  heatByRatio: number;
  /** kg/s of vapour for each K and each kg/kg */
  vapourByTemperature: number;
  vapourByRatio: number;
}

/** Slopes of 0. */
export function marchSlopes(): MarchSlopes {
  return { heatByTemperature: 0, heatByRatio: 0, vapourByTemperature: 0, vapourByRatio: 0 };
}

/** Empty buffers for a field. */
export function marchOutput(field: TubeField): MarchOutput {
  return {
    heat: new Float64Array(field.slices * field.tubes),
    latentHeat: new Float64Array(field.slices * field.tubes),
    latentSlope: new Float64Array(field.slices * field.tubes),
    toAir: 0,
    latent: 0,
    vapour: 0,
    outletTemperature: NaN,
    outletRatio: NaN,
  };
}
