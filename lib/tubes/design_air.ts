/** The air the tube field is sized with. @module */
import type { ClimateYear } from "../climate/types.ts";
import { meanPressure } from "../climate/weather.ts";

/** Air temperature the tube field is sized at, degC: a house being charged. Common practice, no source. */
const DESIGN_AIR_TEMPERATURE = 25;

/** Pressure, Pa, and temperature, degC, of the air at the design flow. */
export interface DesignAir {
  /** Pa */
  readonly pressure: number;
  /** degC */
  readonly airTemperature: number;
}

/** The design air of a climate: mean pressure of the year, charging temperature. */
export function designAir(study: { readonly climate: ClimateYear }): DesignAir {
  return { pressure: meanPressure(study), airTemperature: DESIGN_AIR_TEMPERATURE };
}
