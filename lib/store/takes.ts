/** What the store takes of a study and of the chapters before it. @module */
import { type ClimateYear, plainWeather } from "../climate/mod.ts";
import type { FanResult } from "../fan/types.ts";
import type { HeadersInputs, HeadersResult } from "../headers/types.ts";
import type { HouseInputs } from "../house/types.ts";
import type { SoilInputs, SoilResult } from "../soil/types.ts";
import type { TubesInputs, TubesResult } from "../tubes/types.ts";
import type { StoreRequest } from "./site.ts";
import type { StoreInputs } from "./types.ts";

/** What the store reads of a study. */
export interface StoreStudy {
  readonly store: StoreInputs;
  readonly climate: ClimateYear;
  readonly soil: SoilInputs;
  readonly house: HouseInputs;
  readonly tubes: TubesInputs;
  readonly headers: HeadersInputs;
}

/** Results that the store is computed from. */
export interface StoreEarlier {
  readonly soil: Pick<SoilResult, "properties" | "wave">;
  readonly tubes: TubesResult;
  readonly headers: HeadersResult;
  readonly fan: FanResult;
}

/** Slices along the tubes in comparisons of many stores: within 1 % of the heat of eight. */
const COMPARISON_SLICES = 3;

/** Footing and heater decide nothing here: the house runs free, or is held without limit. */
export function storeRequest(
  study: StoreStudy,
  { soil, tubes, headers, fan }: StoreEarlier,
): StoreRequest {
  const { product, count, length, diameter, positions, filmCoefficient } = tubes;
  return {
    inputs: study.store,
    climate: plainWeather(study.climate),
    soilInputs: study.soil,
    soil: { properties: soil.properties, wave: soil.wave },
    houseInputs: { ...study.house, footingDepth: 0, heaterPower: 0 },
    tubesInputs: { direction: study.tubes.direction, airFlow: study.tubes.airFlow },
    tubes: { product, count, length, diameter, positions, filmCoefficient },
    headers: { shares: headers.shares },
    fan: {
      airFlow: fan.airFlow,
      power: fan.power,
      density: fan.density,
      charge: fan.charge,
      discharge: fan.discharge,
    },
  };
}

/** The same store in fewer slices and with fewer ports: comparisons run a dozen settled years. */
export function coarseRequest(study: StoreStudy, earlier: StoreEarlier): StoreRequest {
  const slices = Math.min(study.store.slices, COMPARISON_SLICES);
  return { ...storeRequest({ ...study, store: { ...study.store, slices } }, earlier), rough: true };
}
