/** The vapour of the house: from crop and floor, onto the cover, out with the air. @module */
import { AIR_HEAT_BY_VOLUME, HEAT_OF_VAPORISATION, MOLAR_MASS_RATIO } from "../../air/mod.ts";
import { PSYCHROMETRIC_FACTOR } from "../crop/transpiration.ts";
import { floorVapour } from "./floor_vapour.ts";
import { quickSaturationOverWater, saturatedRatio } from "./saturation_table.ts";
import type { StepTerms } from "./step_terms.ts";

/** Vapour side of a trial, kg/s, and what follows for heat. */
export interface VapourBalance {
  /** kg/kg, mean over the step */
  humidityRatio: number;
  /** kg/s for each kg/kg: how much the flows that are on fall as the air gets damper */
  slope: number;
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
    const film = 2 * terms.leafArea * AIR_HEAT_BY_VOLUME / terms.leafFilm;
    const gamma = PSYCHROMETRIC_FACTOR * pressure * (1 + terms.stomata / terms.leafFilm);
    const scale = terms.floorArea / ((slope + gamma) * HEAT_OF_VAPORISATION);
    cropFixed = scale * (slope * terms.solarCrop / terms.floorArea + film * saturation);
    cropSlope = scale * film * perRatio;
  }
  const coverTemperature = temperature -
    terms.coverShare * (temperature - terms.glazingDriving);
  const coverRatio = saturatedRatio(coverTemperature, pressure);
  const wet = floorVapour(terms, temperature);
  const flow = terms.leakFlow + opening * terms.ventFlow;
  const { tubes } = terms.boundary;
  let tubesVapour = terms.boundary.storeVapour;
  let tubesSlope = 0;
  if (tubes !== undefined) {
    tubesSlope = tubes.vapourByRatio;
    tubesVapour += tubes.vapourByTemperature * (temperature - terms.boundary.storeReference) -
      tubesSlope * tubes.ratio;
  }
  const fixed = terms.vapourStore * start.humidityRatio + flow * terms.outsideRatio + tubesVapour;
  const slope = terms.vapourStore + flow - tubesSlope;
  let [cropOn, floorOn, coverOn] = [true, true, true];
  let ratio = start.humidityRatio;
  for (let attempt = 0; attempt < 6; attempt++) {
    ratio = (fixed + (cropOn ? cropFixed : 0) +
      (floorOn ? wet.conductance * wet.ratio : 0) +
      (coverOn ? terms.coverVapour * coverRatio : 0)) /
      (slope + (cropOn ? cropSlope : 0) + (floorOn ? wet.conductance : 0) +
        (coverOn ? terms.coverVapour : 0));
    const [crop, floor, cover] = [
      cropFixed - cropSlope * ratio > 0,
      wet.ratio > ratio,
      ratio > coverRatio,
    ];
    if (crop === cropOn && floor === floorOn && cover === coverOn) break;
    [cropOn, floorOn, coverOn] = [crop, floor, cover];
  }
  const full = MOLAR_MASS_RATIO * saturation / (pressure - saturation);
  ratio = Math.max(0, Math.min(ratio, full));
  result.humidityRatio = ratio;
  result.slope = flow - tubesSlope + (cropOn ? cropSlope : 0) + (floorOn ? wet.conductance : 0) +
    (coverOn ? terms.coverVapour : 0);
  result.crop = cropOn ? Math.max(0, cropFixed - cropSlope * ratio) : 0;
  result.floor = floorOn ? Math.max(0, wet.conductance * (wet.ratio - ratio)) : 0;
  result.cover = coverOn ? Math.max(0, terms.coverVapour * (ratio - coverRatio)) : 0;
  result.carried = flow * (ratio - terms.outsideRatio);
  result.mist = tubesVapour + tubesSlope * ratio + result.crop + result.floor - result.cover -
    result.carried - terms.vapourStore * (ratio - start.humidityRatio);
}
