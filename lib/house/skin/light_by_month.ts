/** Where the light that comes through the glazing ends, month by month. @module */
import { monthlySums } from "../../basics/mod.ts";
import type { ClimateYear } from "../../climate/types.ts";
import { hourlySun } from "../../sun/mod.ts";
import { findCrop } from "../crop/crop_table.ts";
import { leafAreaByHour } from "../crop/leaf_area.ts";
import type { HouseInputs } from "../types.ts";
import { houseGeometry } from "./geometry.ts";
import { findGlazing } from "./glazing_table.ts";
import { planeSeries, solarGain } from "./solar_gain.ts";

/** Light of one month, kWh, with clear glazing and open curtain; the parts add up to what is let in. */
export interface LightMonth {
  /** 0 to 11 */
  readonly month: number;
  /** kWh let in through the glazing */
  readonly letIn: number;
  /** kWh taken up by the crop */
  readonly crop: number;
  /** kWh taken up by the floor */
  readonly floor: number;
  /** kWh taken up by barrels and masonry */
  readonly mass: number;
  /** kWh taken up by solid walls and roofs and passed to the air */
  readonly air: number;
  /** kWh out again through the glazing, or taken up in it */
  readonly out: number;
  /** kWh taken up by solid walls and roofs and lost outwards */
  readonly throughSolid: number;
}

/**
 * Where the light ends in each month, with clear glazing and open curtain.
 *
 * @param inputs house section of the study
 * @param climate one year of weather
 * @returns kWh
 */
export function lightByMonth(inputs: HouseInputs, climate: ClimateYear): LightMonth[] {
  const sun = hourlySun(climate.place);
  const crop = findCrop(inputs.crop);
  const gain = solarGain({
    inputs,
    geometry: houseGeometry(inputs),
    glazing: findGlazing(inputs.glazing),
    crop,
    leafArea: leafAreaByHour(crop.id === "bare" ? 0 : inputs.leafArea),
    sun,
    series: planeSeries(climate, sun),
  });
  const kilowattHours = (series: Float64Array) => monthlySums(series).map((sum) => sum / 1000);
  const [letIn, onCrop, floor, mass, air, out, throughSolid] = [
    gain.letIn,
    gain.crop,
    gain.floor,
    gain.mass,
    gain.air,
    gain.out,
    gain.throughSolid,
  ].map(kilowattHours);
  return Array.from({ length: 12 }, (_, month) => ({
    month,
    letIn: letIn![month]!,
    crop: onCrop![month]!,
    floor: floor![month]!,
    mass: mass![month]!,
    air: air![month]!,
    out: out![month]!,
    throughSolid: throughSolid![month]!,
  }));
}
