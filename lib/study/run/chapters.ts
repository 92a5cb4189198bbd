/** How each chapter is called for a study: which inputs and which upstream results it takes. @module */
import { type ClimateResult, summariseClimate } from "../../climate/mod.ts";
import { fanChapter, type FanResult } from "../../fan/mod.ts";
import { headersChapter, type HeadersResult } from "../../headers/mod.ts";
import {
  houseChapter,
  type HouseResult,
  type RankedMeasure,
  rankMeasures,
} from "../../house/mod.ts";
import { soilChapter, type SoilResult } from "../../soil/mod.ts";
import {
  type HouseWay,
  houseWays,
  storeChapter,
  type StoreRequest,
  type StoreResult,
  storeVariants,
  type VariantRow,
} from "../../store/mod.ts";
import { tubesChapter, type TubesResult } from "../../tubes/mod.ts";
import type { Study } from "../types.ts";

/** Air temperature the tube field is sized at, degC: a house being charged. Common practice, no source. */
export const DESIGN_AIR_TEMPERATURE = 25;

/** m, middle of the layers of tubes. */
export function middleOfLayers(study: Study): number {
  return study.tubes.depth + (study.tubes.layers - 1) * study.tubes.layerSpacing / 2;
}

/** Pa, mean of the year. */
export function meanPressure(study: Study): number {
  const { pressure } = study.climate;
  return pressure.reduce((sum, value) => sum + value, 0) / pressure.length;
}

function designAir(study: Study): { readonly pressure: number; readonly airTemperature: number } {
  return { pressure: meanPressure(study), airTemperature: DESIGN_AIR_TEMPERATURE };
}

/** Climate chapter of a study. */
export function climateOf(study: Study): ClimateResult {
  return summariseClimate(study.climate);
}

/** Soil chapter of a study. */
export function soilOf(study: Study): SoilResult {
  return soilChapter(study.soil, study.climate, middleOfLayers(study));
}

/** House chapter of a study. */
export function houseOf(study: Study, soil: SoilResult): HouseResult {
  return houseChapter(study.house, study.climate, soil);
}

/** What each improvement of the house of a study brings. */
export function rankingOf(study: Study, soil: SoilResult): readonly RankedMeasure[] {
  return rankMeasures(study.house, study.climate, soil);
}

/** Tubes chapter of a study. */
export function tubesOf(study: Study, house: HouseResult): TubesResult {
  const { footingDepth } = study.house;
  return tubesChapter(study.tubes, { house: house.geometry, footingDepth, ...designAir(study) });
}

/** Headers chapter of a study. */
export function headersOf(study: Study, tubes: TubesResult): HeadersResult {
  return headersChapter(study.headers, tubes, designAir(study));
}

/** Fan chapter of a study. */
export function fanOf(study: Study, tubes: TubesResult, headers: HeadersResult): FanResult {
  return fanChapter(study.fan, { tubes, tubesInputs: study.tubes, headers, ...designAir(study) });
}

/** What the store takes from other chapters. */
export type StoreUpstream = Pick<StoreRequest, "soil" | "tubes" | "headers" | "fan">;

/** Slices along the tubes in comparisons of many stores: within 1 % of the heat of eight. */
export const COMPARISON_SLICES = 3;

function storeRequest(study: Study, upstream: StoreUpstream): StoreRequest {
  return {
    inputs: study.store,
    climate: study.climate,
    soilInputs: study.soil,
    houseInputs: study.house,
    tubesInputs: study.tubes,
    ...upstream,
  };
}

/** The same store in fewer slices: comparisons run a dozen settled years. */
function coarseRequest(study: Study, upstream: StoreUpstream): StoreRequest {
  const slices = Math.min(study.store.slices, COMPARISON_SLICES);
  return { ...storeRequest(study, upstream), inputs: { ...study.store, slices } };
}

/** Store chapter of a study. */
export function storeOf(study: Study, upstream: StoreUpstream): StoreResult {
  return storeChapter(storeRequest(study, upstream));
}

/** The house of a study with and without store and curtain. */
export function waysOf(study: Study, upstream: StoreUpstream): readonly HouseWay[] {
  return houseWays(coarseRequest(study, upstream));
}

/** The store of a study built or run otherwise. */
export function variantsOf(study: Study, upstream: StoreUpstream): readonly VariantRow[] {
  return storeVariants(coarseRequest(study, upstream));
}
