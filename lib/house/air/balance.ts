/** The house's balance of heat and vapour for a trial air temperature. @module */
import {
  DRY_AIR_HEAT_CAPACITY,
  HEAT_OF_VAPORISATION,
  MOLAR_MASS_RATIO,
  VAPOUR_HEAT_CAPACITY,
} from "../../air/mod.ts";
import { STEFAN_BOLTZMANN, ZERO_CELSIUS } from "../../basics/mod.ts";
import { massContent, type MassStore, massStoreAt, massTemperature } from "../mass.ts";
import { LEWIS_POWER } from "./model.ts";
import { quickSaturation, quickSaturationOverWater } from "./saturation_table.ts";
import {
  leafFilmResistance,
  PSYCHROMETRIC_FACTOR,
  stomatalResistance,
} from "../crop/transpiration.ts";
import type { HouseBoundary, HouseModel, HouseState } from "../types.ts";

/** K between house and outside at which `leakage` holds in calm air. */
export const LEAKAGE_DIFFERENCE = 20;
/** ppm by volume of outside air (about 2020). */
const CARBON_DIOXIDE = 420;
/** K assumed between leaf and air in the leaf's film. */
const LEAF_DIFFERENCE = 1;
const AIR_HEAT = 1207;

/**
 * Air changes by leakage: stack and wind added.
 * n = n_calm·√(|ΔT|/20 K) + n_wind·v.
 *
 * Source: stack flow goes with the square root of the temperature difference (ASHRAE Fundamentals
 * 2017 [ashrae-2017] ch. 16); the sum of the two parts is the trade's linear rule (common practice,
 * no source).
 *
 * @param inputs leakage figures of the house
 * @param difference K between house and outside
 * @param wind m/s
 * @returns 1/h
 */
export function leakageRate(
  inputs: { readonly leakage: number; readonly leakageWind: number },
  difference: number,
  wind: number,
): number {
  return inputs.leakage * Math.sqrt(Math.abs(difference) / LEAKAGE_DIFFERENCE) +
    inputs.leakageWind * wind;
}

/**
 * All that is fixed during one step, gathered so that a trial air temperature costs little.
 * Temperatures in degC, conductances in W/K, vapour conductances in kg/s.
 */
export interface StepTerms {
  /** J/K over s */
  readonly airStore: number;
  /** W/K: heat per kelvin of the mass over the step */
  readonly massStore: MassStore;
  /** W: content of the mass at the start over the step */
  readonly massStart: number;
  readonly massConductance: number;
  readonly glazing: number;
  readonly glazingDriving: number;
  /** W/K and W of straight radiation to the sky: loss = filmSlope·T + filmConstant */
  readonly filmSlope: number;
  readonly filmConstant: number;
  readonly opaque: number;
  readonly opaqueDriving: number;
  readonly outside: number;
  readonly outsideRatio: number;
  /** kg/s of dry air by leakage and by fully open vents */
  readonly leakFlow: number;
  readonly ventFlow: number;
  /** J/(kg K) of the air that comes in */
  readonly heatCapacity: number;
  /** W/K of floor film, all of the floor */
  readonly floorFilm: number;
  readonly solarFloor: number;
  readonly solarCrop: number;
  readonly solarMass: number;
  readonly solarAir: number;
  /** crop: film and stomata, s/m */
  readonly leafFilm: number;
  readonly stomata: number;
  readonly floorArea: number;
  readonly leafArea: number;
  readonly pressure: number;
  /** kg/s from wet floor per unit of humidity ratio, and the ratio at its surface */
  readonly floorVapour: number;
  readonly floorRatio: number;
  /** kg/s onto the cover per unit of humidity ratio */
  readonly coverVapour: number;
  /** share U/h of the temperature drop that lies inside */
  readonly coverShare: number;
  /** kg over s */
  readonly vapourStore: number;
  readonly start: HouseState;
  readonly boundary: HouseBoundary;
}

/** kg/kg of air saturated over ice or water. */
function saturatedRatio(temperature: number, pressure: number): number {
  const vapour = Math.min(0.9 * pressure, quickSaturation(temperature));
  return MOLAR_MASS_RATIO * vapour / (pressure - vapour);
}

function overStep(store: MassStore, seconds: number): MassStore {
  return {
    thawed: store.thawed / seconds,
    freezing: store.freezing / seconds,
    frozen: store.frozen / seconds,
  };
}

/** Gathers the terms of one step. */
export function stepTerms(
  model: HouseModel,
  start: HouseState,
  hour: number,
  stepSeconds: number,
  boundary: HouseBoundary,
): StepTerms {
  const outside = model.outsideTemperature[hour]!;
  const outsideRatio = model.outsideRatio[hour]!;
  const floorArea = model.geometry.floorArea;
  const airChanges = model.dryAirMass / 3600;
  const difference = start.airTemperature - outside;
  const kelvin = start.airTemperature + ZERO_CELSIUS;
  const filmSlope = 4 * model.filmArea[hour]! * STEFAN_BOLTZMANN * kelvin ** 3;
  const vapour = model.pressure * start.humidityRatio / (MOLAR_MASS_RATIO + start.humidityRatio);
  const deficit = quickSaturationOverWater(start.airTemperature) - vapour;
  const glazing = model.glazingConductance[hour]!;
  const massStore = overStep(model.massStore, stepSeconds);
  return {
    airStore: model.airCapacity / stepSeconds,
    massStore,
    massStart: massContent(massStore, start.massTemperature),
    massConductance: model.massConductance,
    glazing,
    glazingDriving: model.glazingDriving[hour]!,
    filmSlope,
    filmConstant: model.filmArea[hour]! *
        (STEFAN_BOLTZMANN * kelvin ** 4 - model.filmLongwave[hour]!) -
      filmSlope * start.airTemperature,
    opaque: model.opaqueConductance[hour]!,
    opaqueDriving: model.opaqueDriving[hour]!,
    outside,
    outsideRatio,
    leakFlow: airChanges * leakageRate(model.inputs, difference, model.windSpeed[hour]!),
    ventFlow: airChanges * model.inputs.ventCapacity,
    heatCapacity: DRY_AIR_HEAT_CAPACITY + outsideRatio * VAPOUR_HEAT_CAPACITY,
    floorFilm: model.floorFilm * floorArea,
    solarFloor: model.solarFloor[hour]!,
    solarCrop: model.solarCrop[hour]!,
    solarMass: model.solarMass[hour]!,
    solarAir: model.solarAir[hour]!,
    leafFilm: model.leafArea > 0 ? leafFilmResistance(model.leafLength, LEAF_DIFFERENCE) : 1,
    stomata: model.leafArea > 0
      ? stomatalResistance({
        lightPerLeaf: model.solarCrop[hour]! / floorArea / (2 * model.leafArea),
        leafTemperature: start.airTemperature,
        vapourDeficit: deficit / 1000,
        carbonDioxide: CARBON_DIOXIDE,
      })
      : 1,
    floorArea,
    leafArea: model.leafArea,
    pressure: model.pressure,
    floorVapour: model.floorVapour,
    floorRatio: saturatedRatio(boundary.floorTemperature, model.pressure),
    coverVapour: model.coverArea * Math.min(3.3, model.coverFilm) / (1006 * LEWIS_POWER),
    coverShare: model.coverArea > 0
      ? Math.min(1, glazing / (model.coverArea * model.coverFilm))
      : 0,
    vapourStore: model.dryAirMass / stepSeconds,
    start,
    boundary,
  };
}

/** Vapour side of a trial, kg/s, and what follows for heat. */
export interface VapourBalance {
  humidityRatio: number;
  /** kg/s from the crop, from the floor, onto the cover, as mist on all surfaces */
  crop: number;
  floor: number;
  cover: number;
  mist: number;
  /** kg/s carried out by leakage and vents */
  carried: number;
}

/**
 * Solves the vapour balance at an air temperature. Every flow is linear in the humidity ratio with
 * a floor at 0, so the flows that are on are found by trying.
 */
export function solveVapour(
  terms: StepTerms,
  temperature: number,
  opening: number,
  result: VapourBalance,
): void {
  const { start, pressure } = terms;
  const saturation = Math.min(0.9 * pressure, quickSaturationOverWater(temperature));
  const perRatio = pressure / (MOLAR_MASS_RATIO + start.humidityRatio);
  let [cropFixed, cropSlope] = [0, 0];
  if (terms.leafArea > 0) {
    const slope = 4098 * saturation / (temperature + 237.3) ** 2;
    const film = 2 * terms.leafArea * AIR_HEAT / terms.leafFilm;
    const gamma = PSYCHROMETRIC_FACTOR * pressure * (1 + terms.stomata / terms.leafFilm);
    const scale = terms.floorArea / ((slope + gamma) * HEAT_OF_VAPORISATION);
    cropFixed = scale * (slope * terms.solarCrop / terms.floorArea + film * saturation);
    cropSlope = scale * film * perRatio;
  }
  const coverTemperature = temperature -
    terms.coverShare * (temperature - terms.glazingDriving);
  const coverRatio = saturatedRatio(coverTemperature, pressure);
  const flow = terms.leakFlow + opening * terms.ventFlow;
  const fixed = terms.vapourStore * start.humidityRatio + flow * terms.outsideRatio +
    terms.boundary.storeVapour;
  const slope = terms.vapourStore + flow;
  let [cropOn, floorOn, coverOn] = [true, true, true];
  let ratio = start.humidityRatio;
  for (let attempt = 0; attempt < 6; attempt++) {
    ratio = (fixed + (cropOn ? cropFixed : 0) +
      (floorOn ? terms.floorVapour * terms.floorRatio : 0) +
      (coverOn ? terms.coverVapour * coverRatio : 0)) /
      (slope + (cropOn ? cropSlope : 0) + (floorOn ? terms.floorVapour : 0) +
        (coverOn ? terms.coverVapour : 0));
    const [crop, floor, cover] = [
      cropFixed - cropSlope * ratio > 0,
      terms.floorRatio > ratio,
      ratio > coverRatio,
    ];
    if (crop === cropOn && floor === floorOn && cover === coverOn) break;
    [cropOn, floorOn, coverOn] = [crop, floor, cover];
  }
  const full = MOLAR_MASS_RATIO * saturation / (pressure - saturation);
  ratio = Math.max(0, Math.min(ratio, full));
  result.humidityRatio = ratio;
  result.crop = cropOn ? Math.max(0, cropFixed - cropSlope * ratio) : 0;
  result.floor = floorOn ? Math.max(0, terms.floorVapour * (terms.floorRatio - ratio)) : 0;
  result.cover = coverOn ? Math.max(0, terms.coverVapour * (ratio - coverRatio)) : 0;
  result.carried = flow * (ratio - terms.outsideRatio);
  result.mist = terms.boundary.storeVapour + result.crop + result.floor - result.cover -
    result.carried - terms.vapourStore * (ratio - start.humidityRatio);
}

/** W/K: how much the heat balance falls per kelvin of air temperature, vapour held. */
export function balanceSlope(terms: StepTerms, opening: number, temperature: number): number {
  const { boundary, massConductance } = terms;
  let mass = 0;
  if (massConductance > 0) {
    const store = massStoreAt(terms.massStore, massAfter(terms, temperature));
    mass = massConductance * store / (store + massConductance);
  }
  return terms.airStore + terms.glazing + terms.filmSlope + terms.opaque + mass +
    boundary.floorConductance - boundary.storeSlope +
    (terms.leakFlow + opening * terms.ventFlow) * terms.heatCapacity;
}

/** degC of the mass at the end of the step. */
export function massAfter(terms: StepTerms, temperature: number): number {
  if (terms.massConductance <= 0) return temperature;
  return massTemperature(
    { store: terms.massStore, conductance: terms.massConductance },
    terms.massStart + terms.solarMass + terms.massConductance * temperature,
  );
}

/** degC that drives heat into the floor: air plus sun less evaporation over the film. */
export function floorDriving(terms: StepTerms, temperature: number, vapour: VapourBalance): number {
  return temperature +
    (terms.solarFloor - HEAT_OF_VAPORISATION * vapour.floor) / terms.floorFilm;
}

/** W to the air and light things at a trial temperature, their storage taken off; heater not in it. */
export function heatBalance(
  terms: StepTerms,
  temperature: number,
  opening: number,
  vapour: VapourBalance,
): number {
  const { boundary, start } = terms;
  const latent = HEAT_OF_VAPORISATION;
  const mass = terms.massConductance > 0
    ? terms.massConductance * (massAfter(terms, temperature) - temperature)
    : terms.solarMass;
  const floor = boundary.floorConductance *
    (floorDriving(terms, temperature, vapour) - boundary.floorTemperature);
  const flow = terms.leakFlow + opening * terms.ventFlow;
  return terms.solarAir + terms.solarCrop + terms.solarFloor + mass - floor -
    latent * (vapour.crop + vapour.floor - vapour.mist - (1 - terms.coverShare) * vapour.cover) -
    terms.glazing * (temperature - terms.glazingDriving) -
    (terms.filmSlope * temperature + terms.filmConstant) -
    terms.opaque * (temperature - terms.opaqueDriving) -
    flow * terms.heatCapacity * (temperature - terms.outside) +
    boundary.storeHeat + boundary.storeSlope * (temperature - boundary.storeReference) -
    terms.airStore * (temperature - start.airTemperature);
}
