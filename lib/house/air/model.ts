/** Everything about the house that does not change from step to step. @module */
import { sum } from "d3-array";
import { airDensity, humidityRatioFromRelativeHumidity } from "../../air/mod.ts";
import { STEFAN_BOLTZMANN, ZERO_CELSIUS } from "../../basics/mod.ts";
import type { ClimateYear } from "../../climate/types.ts";
import { hourlySun, skyLongwave } from "../../sun/mod.ts";
import { findCrop } from "../crop/crop_table.ts";
import {
  BLACK_RADIATION,
  closedShare,
  EMISSIVITY,
  INSIDE_CONVECTION,
  outsideFilm,
  splitGlazing,
  withCurtain,
} from "../skin/films.ts";
import { houseGeometry } from "../skin/geometry.ts";
import { findGlazing } from "../skin/glazing_table.ts";
import { MASS_FREEZING_RANGE } from "../mass.ts";
import { pastMonthMean, type PlaneSeries, planeSeries, solarGain } from "../skin/solar_gain.ts";
import type { HouseGeometry, HouseInputs, HouseModel, HouseState, SkinPart } from "../types.ts";

/**
 * W/(m² K) of the floor: convection 3 and radiation 5 (ISO 6946 [iso-6946-2017] inside surface,
 * resistance 0.17 to 0.10: 5.9 to 10).
 */
export const FLOOR_FILM = 8;
/** J/(K m² of floor): frame, benches, pots (common practice, no source). */
const LIGHT_STRUCTURE = 8000;
/** J/(kg K) of leaves and water; J/(m³ K) of water. */
const WATER_HEAT = 4186;
const WATER_VOLUME_HEAT = 4.186e6;
/** J/(m³ K) of a cubic metre of water once it is ice, and J/m³ set free on freezing (334 kJ/kg). */
const ICE_VOLUME_HEAT = 2.1e6;
const FUSION_HEAT = 3.34e8;
/**
 * J/(m³ K) and W/(m K) of brick and concrete (EN ISO 10456 [iso-10456-2007], concrete 2.0e6 and
 * 1.15 to 1.65, from memory).
 */
const MASONRY_HEAT = 2e6;
const MASONRY_CONDUCTIVITY = 1.3;
/** W/(m² K) of a barrel: convection 3 and radiation 5 (common practice, no source). */
const BARREL_FILM = 8;
/** Lewis number of water vapour in air to the 2/3: 0.87^(2/3) (from memory). */
export const LEWIS_POWER = 0.91;
/** Solar absorptance of the outside of solid walls (common practice, no source). */
const WALL_ABSORPTANCE = 0.5;
const INSIDE_HEAT = 1006;
/** degC of the past 30 days above which shade is on (common practice, no source). */
const SUMMER_SHADE_ABOVE = 15;

/** m² K/W of a metre of earth against a wall: path πd/4 through soil of 1.5 W/(m K) (common practice, no source). */
const EARTH_RESISTANCE = Math.PI / 4 / 1.5;

function skyShare(part: SkinPart): number {
  return (1 + Math.cos(part.plane.tilt * Math.PI / 180)) / 2;
}

function curtainSchedule(inputs: HouseInputs, climate: ClimateYear): Uint8Array {
  const curtain = inputs.curtain;
  const closed = new Uint8Array(climate.dryBulb.length);
  if (curtain === null) return closed;
  const coldBelow = curtain.closeBelowOutside ?? inputs.heatSetPoint + 5;
  for (let hour = 0; hour < closed.length; hour++) {
    const dark = climate.globalHorizontal[hour]! < curtain.closeBelow;
    closed[hour] = dark && climate.dryBulb[hour]! < coldBelow ? 1 : 0;
  }
  return closed;
}

/** Radiation that the sky's cold takes from a surface above that of air, W/m². */
function skyDeficit(temperature: number, longwave: number): number {
  return STEFAN_BOLTZMANN * (temperature + ZERO_CELSIUS) ** 4 - longwave;
}

type Skin = Pick<
  HouseModel,
  | "glazingConductance"
  | "glazingDriving"
  | "opaqueConductance"
  | "opaqueDriving"
  | "filmArea"
  | "filmLongwave"
>;

function glazedSkin(
  inputs: HouseInputs,
  geometry: HouseGeometry,
  climate: ClimateYear,
  longwave: Float64Array,
  closed: Uint8Array,
): Omit<Skin, "opaqueConductance" | "opaqueDriving"> {
  const glazing = findGlazing(inputs.glazing);
  const { innerResistance } = splitGlazing(
    glazing.heatTransmittance,
    glazing.longWaveTransmittance,
  );
  const glazed = geometry.parts.filter((part) => part.kind === "glazed");
  const area = glazed.reduce((sum, part) => sum + part.area, 0);
  const seen = area > 0
    ? glazed.reduce((sum, part) => sum + part.area * skyShare(part), 0) / area
    : 0;
  const hours = climate.dryBulb.length;
  const [glazingConductance, glazingDriving, filmArea, filmLongwave] = Array.from(
    { length: 4 },
    () => new Float64Array(hours),
  ) as [Float64Array, Float64Array, Float64Array, Float64Array];
  const clear = glazing.longWaveTransmittance;
  for (let hour = 0; hour < hours; hour++) {
    const outside = climate.dryBulb[hour]!;
    const film = outsideFilm(climate.windSpeed[hour]!);
    const open = 1 / (innerResistance + 1 / film);
    const whole = open + clear * BLACK_RADIATION;
    const left = closed[hour] === 1 && inputs.curtain !== null
      ? withCurtain(whole, inputs.curtain) / whole
      : 1;
    const deficit = seen * skyDeficit(outside, longwave[hour]!);
    glazingConductance[hour] = area * open * left;
    glazingDriving[hour] = outside - EMISSIVITY * (1 - clear) * deficit / film;
    filmArea[hour] = area * clear * left;
    filmLongwave[hour] = STEFAN_BOLTZMANN * (outside + ZERO_CELSIUS) ** 4 - deficit;
  }
  return { glazingConductance, glazingDriving, filmArea, filmLongwave };
}

function opaqueSkin(
  inputs: HouseInputs,
  geometry: HouseGeometry,
  climate: ClimateYear,
  longwave: Float64Array,
  series: PlaneSeries,
): Pick<Skin, "opaqueConductance" | "opaqueDriving"> {
  const hours = climate.dryBulb.length;
  const heat = new Float64Array(hours);
  let conductance = 0;
  const ground = pastMonthMean(climate.dryBulb);
  for (const part of geometry.parts) {
    if (part.kind === "glazed" || part.transmittanceHeat <= 0) continue;
    const { buried, earth } = buriedConductance(part, inputs, geometry);
    const open = part.area * part.transmittanceHeat * (1 - buried);
    conductance += open + earth;
    const radiation = series(part.plane);
    for (let hour = 0; hour < hours; hour++) {
      const outside = climate.dryBulb[hour]!;
      const light = radiation.beam[hour]! + radiation.skyDiffuse[hour]! +
        radiation.groundReflected[hour]!;
      const lost = EMISSIVITY * skyShare(part) * skyDeficit(outside, longwave[hour]!);
      const gained = (WALL_ABSORPTANCE * light - lost) / outsideFilm(climate.windSpeed[hour]!);
      heat[hour] = heat[hour]! + open * (outside + gained) + earth * ground[hour]!;
    }
  }
  return {
    opaqueConductance: new Float64Array(hours).fill(conductance),
    opaqueDriving: conductance > 0
      ? heat.map((value) => value / conductance)
      : climate.dryBulb.slice(),
  };
}

/** Share of the north wall behind earth and its conductance, W/K, towards the ground. */
export function buriedConductance(
  part: SkinPart,
  inputs: HouseInputs,
  geometry: HouseGeometry,
): { buried: number; earth: number } {
  const height = inputs.northEarthHeight ?? 0;
  if (part.name !== "back wall" || part.kind === "glazed" || height <= 0) {
    return { buried: 0, earth: 0 };
  }
  const length = geometry.floorArea / inputs.width;
  const buried = Math.min(1, height * length / part.area);
  const resistance = 1 / part.transmittanceHeat + EARTH_RESISTANCE * height / 2;
  return { buried, earth: part.area * buried / resistance };
}

/** Share of the light that whitewash or shade cloth lets in; on while the past month was warm. */
function summerLight(inputs: HouseInputs, climate: ClimateYear): Float64Array {
  const shade = inputs.summerShade ?? 0;
  const limit = inputs.summerShadeAbove ?? SUMMER_SHADE_ABOVE;
  return pastMonthMean(climate.dryBulb).map((mean) => mean > limit ? 1 - shade : 1);
}

/** Capacity and film of barrels and masonry together; masonry through half its mean thickness. */
function thermalMass(
  inputs: HouseInputs,
): Pick<HouseModel, "massStore" | "massConductance"> {
  const [volume, surface] = [inputs.masonryVolume ?? 0, inputs.masonrySurface ?? 0];
  const water = inputs.waterVolume > 0 ? inputs.waterSurface * BARREL_FILM : 0;
  const masonry = volume > 0 && surface > 0
    ? surface / (1 / BARREL_FILM + volume / surface / 2 / MASONRY_CONDUCTIVITY)
    : 0;
  const held = water > 0 ? inputs.waterVolume : 0;
  const solid = masonry > 0 ? volume * MASONRY_HEAT : 0;
  return {
    massStore: {
      thawed: solid + held * WATER_VOLUME_HEAT,
      freezing: solid +
        held * ((WATER_VOLUME_HEAT + ICE_VOLUME_HEAT) / 2 + FUSION_HEAT / MASS_FREEZING_RANGE),
      frozen: solid + held * ICE_VOLUME_HEAT,
    },
    massConductance: water + masonry,
  };
}

/** degC the heater holds hour by hour: the day's set point while there is light, else the night's. */
function setPoints(inputs: HouseInputs, climate: ClimateYear): Float64Array {
  const day = inputs.heatSetPointDay ?? inputs.heatSetPoint;
  return climate.globalHorizontal.map((light) => light > 0 ? day : inputs.heatSetPoint);
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
  const leafArea = crop.id === "bare" ? 0 : inputs.leafArea;
  const sun = hourlySun(climate.place);
  const longwave = skyLongwave(climate, sun);
  const curtainClosed = curtainSchedule(inputs, climate);
  const series = planeSeries(climate, sun);
  const gain = solarGain({ inputs, geometry, glazing, crop, leafArea, sun, series });
  const blocked = inputs.curtain === null ? 0 : closedShare(inputs.curtain);
  const summer = summerLight(inputs, climate);
  const shaded = (series: Float64Array) =>
    series.map((heat, hour) =>
      heat * summer[hour]! * (curtainClosed[hour] === 1 ? 1 - blocked : 1)
    );
  const hours = climate.dryBulb.length;
  const pressure = sum(climate.pressure) / hours;
  const dryAirMass = geometry.volume * airDensity(10, 0, pressure);
  const floorArea = geometry.floorArea;
  return {
    inputs,
    geometry,
    floorFilm: FLOOR_FILM,
    solarFloor: shaded(gain.floor),
    solarCrop: shaded(gain.crop),
    solarMass: shaded(gain.mass),
    solarAir: shaded(gain.air),
    setPoint: setPoints(inputs, climate),
    solarOutside: gain.outside,
    curtainClosed,
    ...glazedSkin(inputs, geometry, climate, longwave, curtainClosed),
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
    airCapacity: dryAirMass * INSIDE_HEAT +
      floorArea * (LIGHT_STRUCTURE + leafArea * crop.freshMass * WATER_HEAT),
    ...thermalMass(inputs),
    coverArea: geometry.parts.reduce((sum, p) => sum + (p.kind === "glazed" ? p.area : 0), 0),
    coverFilm: splitGlazing(glazing.heatTransmittance, glazing.longWaveTransmittance).insideFilm,
    floorVapour: floorArea * crop.wetFloor * INSIDE_CONVECTION / (INSIDE_HEAT * LEWIS_POWER),
    leafArea,
    leafLength: crop.leafLength,
  };
}

/**
 * A state to start from: the house as warm and as damp as outside in the first hour, not below the
 * heating set point where there is a heater.
 */
export function initialHouseState(model: HouseModel): HouseState {
  const outside = model.outsideTemperature[0]!;
  const temperature = model.inputs.heaterPower > 0
    ? Math.max(outside, model.setPoint[0]!)
    : outside;
  return {
    airTemperature: temperature,
    humidityRatio: model.outsideRatio[0]!,
    massTemperature: temperature,
    ventOpening: 0,
  };
}
