/** What curtain and summer shade leave of the light. @module */
import type { ClimateYear } from "../../climate/types.ts";
import type { HouseInputs } from "../types.ts";
import { closedShare } from "./curtain.ts";
import { summerLight } from "./summer_shade.ts";

/**
 * Takes curtain and summer shade off an hourly series of light.
 *
 * @param inputs house section of the study
 * @param climate one year of weather
 * @param curtainClosed 1 for each hour with the curtain closed
 */
export function shading(
  inputs: HouseInputs,
  climate: ClimateYear,
  curtainClosed: Uint8Array,
): (light: Float64Array) => Float64Array {
  const blocked = inputs.curtain === null ? 0 : closedShare(inputs.curtain);
  const summer = summerLight(inputs, climate);
  return (light) =>
    light.map((value, hour) =>
      value * summer[hour]! * (curtainClosed[hour] === 1 ? 1 - blocked : 1)
    );
}
