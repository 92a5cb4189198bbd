/** The house's balance of heat for a trial air temperature. @module */
import { HEAT_OF_VAPORISATION } from "../../air/mod.ts";
import { massStoreAt, massTemperature } from "../barrels_and_masonry.ts";
import { drivingSlope, floorDriving, floorRise, riseSlope } from "./floor_surface.ts";
import type { StepTerms } from "./step_terms.ts";
import type { VapourBalance } from "./vapour.ts";

/** W/K: how much the heat balance falls per kelvin of air temperature, vapour held. */
export function balanceSlope(terms: StepTerms, opening: number, temperature: number): number {
  const { boundary, massConductance } = terms;
  let mass = 0;
  if (massConductance > 0) {
    const store = massStoreAt(terms.massStore, massAfter(terms, temperature));
    mass = massConductance * store / (store + massConductance * terms.massWeight);
  }
  if (terms.masonryConductance > 0) {
    const { masonryStore: store, masonryConductance: film } = terms;
    mass += film * store / (store + film * terms.masonryWeight);
  }
  return terms.airStore + terms.glazing + terms.filmSlope + terms.opaque + mass +
    boundary.floorConductance * drivingSlope(terms) + terms.view.perAir * riseSlope(terms) -
    boundary.storeSlope +
    (terms.leakFlow + opening * terms.ventFlow) * terms.heatCapacity;
}

/** degC of the masonry at the end of the step. */
export function masonryAfter(terms: StepTerms, temperature: number): number {
  const { masonryStore: store, masonryConductance: film, masonryWeight: weight, start } = terms;
  if (film <= 0) return temperature;
  const before = start.masonryTemperature;
  return (store * before + terms.solarMasonry + film * (temperature - (1 - weight) * before)) /
    (store + film * weight);
}

/** degC of the masonry, mean over the step. */
export function masonryMean(terms: StepTerms, temperature: number): number {
  if (terms.masonryConductance <= 0) return temperature;
  const before = terms.start.masonryTemperature;
  return before + terms.masonryWeight * (masonryAfter(terms, temperature) - before);
}

/** degC of the barrels at the end of the step. */
export function massAfter(terms: StepTerms, temperature: number): number {
  const { massConductance: film, massWeight: weight } = terms;
  if (film <= 0) return temperature;
  return massTemperature(
    { store: terms.massStore, conductance: film * weight },
    terms.massStart + terms.solarMass +
      film * (temperature - (1 - weight) * terms.start.massTemperature),
  );
}

/** degC of the barrels, mean over the step. */
export function massMean(terms: StepTerms, temperature: number): number {
  if (terms.massConductance <= 0) return temperature;
  const before = terms.start.massTemperature;
  return before + terms.massWeight * (massAfter(terms, temperature) - before);
}

/** W, sensible, that the tubes give the house's air. */
export function tubesHeat(terms: StepTerms, temperature: number, vapour: VapourBalance): number {
  const { storeHeat, storeSlope, storeReference, tubes } = terms.boundary;
  const heat = storeHeat + storeSlope * (temperature - storeReference);
  return tubes === undefined
    ? heat
    : heat + tubes.heatByRatio * (vapour.humidityRatio - tubes.ratio);
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
  let mass = terms.massConductance > 0
    ? terms.massConductance * (massMean(terms, temperature) - temperature)
    : terms.solarMass;
  mass += terms.masonryConductance > 0
    ? terms.masonryConductance * (masonryMean(terms, temperature) - temperature)
    : terms.solarMasonry;
  const floor = boundary.floorConductance *
    (floorDriving(terms, temperature, vapour.floor) - boundary.floorTemperature);
  const flow = terms.leakFlow + opening * terms.ventFlow;
  return terms.solarAir + terms.solarCrop + terms.solarFloor + mass - floor -
    latent * (vapour.crop - vapour.mist - (1 - terms.coverShare) * vapour.cover) -
    terms.floorLatent * vapour.floor -
    terms.glazing * (temperature - terms.glazingDriving) -
    (terms.filmSlope * temperature + terms.filmConstant) -
    terms.view.perAir * floorRise(terms, temperature, vapour.floor) -
    terms.opaque * (temperature - terms.opaqueDriving) -
    flow * terms.heatCapacity * (temperature - terms.outside) +
    tubesHeat(terms, temperature, vapour) -
    terms.airStore * (temperature - start.airTemperature);
}
