/** What is fixed during one step of the house. @module */
import { DRY_AIR_HEAT_CAPACITY, MOLAR_MASS_RATIO, VAPOUR_HEAT_CAPACITY } from "../../air/mod.ts";
import { HOUR, STEFAN_BOLTZMANN, ZERO_CELSIUS } from "../../basics/mod.ts";
import { massContent } from "../barrels_and_masonry.ts";
import {
  CARBON_DIOXIDE,
  LEAF_DIFFERENCE,
  leafFilmResistance,
  openStomata,
  stomatalResistance,
} from "../crop/transpiration.ts";
import { LEWIS_POWER } from "../skin/films.ts";
import { leakageRate } from "../skin/leakage.ts";
import type { HouseBoundary, HouseModel, HouseState, MassStore } from "../types.ts";
import { endWeight } from "./end_weight.ts";
import { type FloorView, floorView } from "./floor_view.ts";
import { heatPerVapour } from "./frozen_surface.ts";
import { quickSaturationOverWater } from "./saturation_table.ts";

/**
 * All that is fixed during one step, gathered so that a trial air temperature costs little.
 * Temperatures in degC, conductances in W/K, vapour conductances in kg/s.
 */
export interface StepTerms {
  /** W/K: heat that moves the mean of the air by a kelvin, J/K over s and the weight below */
  airStore: number;
  /** weight of the end of the step in its mean, for air, vapour, barrels and masonry */
  airWeight: number;
  vapourWeight: number;
  readonly massWeight: number;
  readonly masonryWeight: number;
  /** W/K: heat per kelvin of the mass over the step */
  readonly massStore: MassStore;
  /** W: content of the mass at the start over the step */
  readonly massStart: number;
  readonly massConductance: number;
  /** W/K: heat per kelvin of the masonry over the step, and its film with half its thickness */
  readonly masonryStore: number;
  readonly masonryConductance: number;
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
  /** what the floor sees of cover and sky */
  readonly view: FloorView;
  readonly solarFloor: number;
  readonly solarCrop: number;
  readonly solarMass: number;
  readonly solarMasonry: number;
  readonly solarAir: number;
  /** crop: film and stomata, s/m */
  readonly leafFilm: number;
  readonly stomata: number;
  readonly floorArea: number;
  readonly leafArea: number;
  readonly pressure: number;
  /** kg/s from wet floor per unit of humidity ratio */
  readonly floorVapour: number;
  /** J/kg that this vapour takes, from water or from ice */
  readonly floorLatent: number;
  /** kg/s onto the cover per unit of humidity ratio */
  readonly coverVapour: number;
  /** share U/h of the temperature drop that lies inside */
  readonly coverShare: number;
  /** kg/s: vapour that moves the mean humidity ratio by 1, kg over s and its weight */
  vapourStore: number;
  /** K by which evaporation held the floor's surface above the dry one in the last trial; NaN before */
  wetRise: number;
  readonly start: HouseState;
  readonly boundary: HouseBoundary;
}

function overStep(store: MassStore, seconds: number): MassStore {
  return {
    thawed: store.thawed / seconds,
    freezing: store.freezing / seconds,
    frozen: store.frozen / seconds,
  };
}

/** degC of the floor's surface: between soil and air, warmed by the sun. */
function surfaceAbout(
  model: HouseModel,
  about: Pick<HouseState, "airTemperature">,
  hour: number,
  boundary: HouseBoundary,
): number {
  const film = model.surfaceFilm * model.geometry.floorArea;
  const soil = Math.min(1, boundary.floorConductance / film);
  return soil * boundary.floorTemperature +
    (1 - soil) * (about.airTemperature + model.solarFloor[hour]! / film);
}

/**
 * Gathers the terms of one step; stomata, cracks and the film's radiation as they answer the air
 * `about` which they are taken.
 */
export function stepTerms(
  model: HouseModel,
  start: HouseState,
  hour: number,
  stepSeconds: number,
  boundary: HouseBoundary,
  about: Pick<HouseState, "airTemperature" | "humidityRatio"> = start,
): StepTerms {
  const outside = model.outsideTemperature[hour]!;
  const outsideRatio = model.outsideRatio[hour]!;
  const floorArea = model.geometry.floorArea;
  const airChanges = model.dryAirMass / HOUR;
  const difference = about.airTemperature - outside;
  const kelvin = about.airTemperature + ZERO_CELSIUS;
  const filmSlope = 4 * model.filmArea[hour]! * STEFAN_BOLTZMANN * kelvin ** 3;
  const vapour = model.pressure * about.humidityRatio / (MOLAR_MASS_RATIO + about.humidityRatio);
  const deficit = quickSaturationOverWater(about.airTemperature) - vapour;
  const glazing = model.glazingConductance[hour]!;
  const leafArea = model.leafArea[hour]!;
  const coverShare = model.coverArea > 0
    ? Math.min(1, glazing / (model.coverArea * model.coverFilm))
    : 0;
  const skin = {
    glazing,
    glazingDriving: model.glazingDriving[hour]!,
    coverShare,
    filmSlope,
    filmConstant: model.filmArea[hour]! *
        (STEFAN_BOLTZMANN * kelvin ** 4 - model.filmLongwave[hour]!) -
      filmSlope * about.airTemperature,
  };
  const massStore = overStep(model.massStore, stepSeconds);
  return {
    airStore: model.airCapacity / stepSeconds,
    airWeight: 1,
    vapourWeight: 1,
    massWeight: model.massConductance > 0 ? endWeight(model.massConductance / massStore.thawed) : 1,
    masonryWeight: model.masonryConductance > 0
      ? endWeight(model.masonryConductance * stepSeconds / model.masonryStore)
      : 1,
    massStore,
    massStart: massContent(massStore, start.massTemperature),
    massConductance: model.massConductance,
    masonryStore: model.masonryStore / stepSeconds,
    masonryConductance: model.masonryConductance,
    ...skin,
    opaque: model.opaqueConductance[hour]!,
    opaqueDriving: model.opaqueDriving[hour]!,
    outside,
    outsideRatio,
    leakFlow: airChanges * leakageRate(model.inputs, difference, model.windSpeed[hour]!),
    ventFlow: airChanges * model.inputs.ventCapacity,
    heatCapacity: DRY_AIR_HEAT_CAPACITY + outsideRatio * VAPOUR_HEAT_CAPACITY,
    floorFilm: model.surfaceFilm * floorArea,
    view: floorView(model, hour, skin, boundary),
    solarFloor: model.solarFloor[hour]!,
    solarCrop: model.solarCrop[hour]!,
    solarMass: model.solarMass[hour]! * (1 - model.masonrySunShare),
    solarMasonry: model.solarMass[hour]! * model.masonrySunShare,
    solarAir: model.solarAir[hour]!,
    leafFilm: leafArea > 0 ? leafFilmResistance(model.leafLength, LEAF_DIFFERENCE) : 1,
    stomata: leafArea > 0
      ? stomatalResistance({
        lightPerLeaf: model.solarCrop[hour]! / floorArea / (2 * leafArea),
        leafTemperature: about.airTemperature,
        vapourDeficit: deficit / 1000,
        carbonDioxide: CARBON_DIOXIDE,
      }) / openStomata(about.airTemperature)
      : 1,
    floorArea,
    leafArea,
    pressure: model.pressure,
    floorVapour: model.floorVapour,
    floorLatent: heatPerVapour(surfaceAbout(model, about, hour, boundary)),
    coverVapour: model.coverArea * Math.min(3.3, model.coverFilm) /
      (DRY_AIR_HEAT_CAPACITY * LEWIS_POWER),
    vapourStore: model.dryAirMass / stepSeconds,
    wetRise: NaN,
    start,
    boundary,
  };
}
