/** Everything about the house that does not change from step to step. @module */
import { WATER_HEAT_CAPACITY } from "../../basics/mod.ts";
import { mean, sum } from "d3-array";
import {
  airDensity,
  DRY_AIR_HEAT_CAPACITY,
  humidityRatioFromRelativeHumidity,
} from "../../air/mod.ts";
import type { ClimateYear } from "../../climate/types.ts";
import { hourlySun, skyLongwave } from "../../sun/mod.ts";
import { seasonDays } from "../../units/mod.ts";
import { thermalMass } from "../barrels_and_masonry.ts";
import { openSky } from "../crop/canopy_cover.ts";
import { findCrop } from "../crop/crop_table.ts";
import { leafAreaByHour } from "../crop/leaf_area.ts";
import { floorCoupling, floorEvaporation } from "../floor/floor_cover.ts";
import { scheduledSkin } from "../skin/curtained_skin.ts";
import { FLOOR_FILM, INSIDE_CONVECTION, LEWIS_POWER, splitGlazing } from "../skin/films.ts";
import { houseGeometry } from "../skin/geometry.ts";
import { findGlazing } from "../skin/glazing_table.ts";
import { glazingSnow } from "../skin/glazing_snow.ts";
import { glazedSkin, opaqueSkin } from "../skin/hourly_skin.ts";
import { shading } from "../skin/shading.ts";
import { planeSeries, solarGain } from "../skin/solar_gain.ts";
import type { HouseInputs, HouseModel, HouseState } from "../types.ts";

/** J/(K m² of floor): frame, benches, pots (common practice, no source). */
const LIGHT_STRUCTURE = 8000;

/** degC the heater holds hour by hour: the day's set point while there is light, else the night's. */
function setPoints(inputs: HouseInputs, climate: ClimateYear): Float64Array {
  return climate.globalHorizontal.map((light) =>
    light > 0 ? inputs.heatSetPointDay : inputs.heatSetPoint
  );
}

/**
 * Builds the house: geometry, hourly sun, films, curtain, air outside, capacities.
 *
 * @param inputs house section of the study
 * @param climate one year of weather
 * @throws {InputError} for an unknown glazing or crop or contradictory dimensions
 */
export function houseModel(inputs: HouseInputs, climate: ClimateYear): HouseModel {
  const geometry = houseGeometry(inputs);
  const glazing = findGlazing(inputs.glazing);
  const crop = findCrop(inputs.crop);
  const leafArea = leafAreaByHour(crop.id === "bare" ? 0 : inputs.leafArea);
  const sun = hourlySun(climate.place);
  const longwave = skyLongwave(climate, sun);
  const series = planeSeries(climate, sun);
  const setPoint = setPoints(inputs, climate);
  const under = (snow: ReturnType<typeof glazingSnow>) =>
    solarGain({ inputs, geometry, glazing, crop, leafArea, sun, series, snow });
  let bare: ReturnType<typeof solarGain> | undefined;
  const skin = scheduledSkin(inputs, climate, setPoint, (closed) => {
    const snow = glazingSnow({ inputs, geometry, climate, series, closed });
    const gain = snow === null ? bare ??= under(null) : under(snow);
    const shaded = shading(inputs, climate, closed);
    return {
      solarFloor: shaded(gain.floor),
      solarCrop: shaded(gain.crop),
      solarMass: shaded(gain.mass),
      solarAir: shaded(gain.air),
      solarRising: shaded(gain.rising),
      solarOutside: gain.outside,
      ...glazedSkin(inputs, geometry, climate, longwave, closed, snow),
    };
  });
  const hours = climate.dryBulb.length;
  const pressure = sum(climate.pressure) / hours;
  const dryAirMass = geometry.volume * airDensity(10, 0, pressure);
  const floorArea = geometry.floorArea;
  const skinArea = sum(geometry.parts, (part) => part.area);
  // of one weight all year: leaves bring their own heat when they grow and take it when they are cut
  const meanLeafArea = typeof inputs.leafArea === "number" ? leafArea[0]! : mean(leafArea)!;
  return {
    inputs,
    geometry,
    floorFilm: floorCoupling(inputs),
    surfaceFilm: FLOOR_FILM,
    floorView: leafArea.map((leaves) => openSky(leaves) * floorArea / skinArea),
    ...skin,
    setPoint,
    heatedDays: seasonDays(inputs.heatSeason ?? "all year"),
    ...opaqueSkin(inputs, geometry, climate, longwave, series),
    outsideTemperature: climate.dryBulb,
    outsideRatio: climate.dryBulb.map((temperature, hour) =>
      humidityRatioFromRelativeHumidity(
        temperature,
        Math.min(1, climate.relativeHumidity[hour]!),
        pressure,
      )
    ),
    windSpeed: climate.windSpeed,
    pressure,
    dryAirMass,
    airCapacity: dryAirMass * DRY_AIR_HEAT_CAPACITY +
      floorArea * (LIGHT_STRUCTURE + meanLeafArea * crop.freshMass * WATER_HEAT_CAPACITY),
    ...thermalMass(inputs),
    coverArea: geometry.parts.reduce((sum, p) => sum + (p.kind === "glazed" ? p.area : 0), 0),
    coverFilm: splitGlazing(glazing.heatTransmittance, glazing.longWaveTransmittance).insideFilm,
    floorVapour: floorArea * crop.wetFloor * floorEvaporation(inputs) * INSIDE_CONVECTION /
      (DRY_AIR_HEAT_CAPACITY * LEWIS_POWER),
    leafArea,
    leafLength: crop.leafLength,
  };
}

/**
 * W that the heater can give in an hour: nothing out of its season.
 *
 * @param model the house
 * @param hour of the year, 0 to 8759
 */
export function heaterPowerAt({ inputs, heatedDays }: HouseModel, hour: number): number {
  return heatedDays?.[Math.floor(hour / 24)] === 0 ? 0 : inputs.heaterPower;
}

/**
 * A state to start from: the house as warm and as damp as outside in the first hour, not below the
 * heating set point where there is a heater.
 */
export function initialHouseState(model: HouseModel): HouseState {
  const outside = model.outsideTemperature[0]!;
  const temperature = heaterPowerAt(model, 0) > 0 ? Math.max(outside, model.setPoint[0]!) : outside;
  return {
    airTemperature: temperature,
    humidityRatio: model.outsideRatio[0]!,
    massTemperature: temperature,
    masonryTemperature: temperature,
    ventOpening: 0,
  };
}
