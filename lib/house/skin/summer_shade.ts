/** Whitewash or shade cloth through the warm months. @module */
import type { ClimateYear } from "../../climate/types.ts";
import type { HouseInputs } from "../types.ts";
import { pastMonthMean } from "./solar_gain.ts";

/**
 * Share of the light that whitewash or shade cloth lets in; on while the past month was warm.
 *
 * @param inputs house section of the study
 * @param climate one year of weather
 * @returns 0 to 1, hour by hour
 */
export function summerLight(inputs: HouseInputs, climate: ClimateYear): Float64Array {
  const { summerShade, summerShadeAbove } = inputs;
  return pastMonthMean(climate.dryBulb).map((mean) =>
    mean > summerShadeAbove ? 1 - summerShade : 1
  );
}
