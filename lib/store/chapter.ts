/** The store chapter: what happens over days, seasons and years? @module */
import { chapter, extra } from "../basics/mod.ts";
import { type ClimateYear, plainWeather } from "../climate/mod.ts";
import type { FanResult } from "../fan/types.ts";
import type { HeadersResult } from "../headers/types.ts";
import type { HouseInputs } from "../house/types.ts";
import type { SoilInputs, SoilResult } from "../soil/types.ts";
import type { TubesInputs, TubesResult } from "../tubes/types.ts";
import { storeChapter } from "./compute.ts";
import { storeFields } from "./fields.ts";
import { storeFigures } from "./figures.ts";
import type { StoreRequest } from "./site.ts";
import type { StoreInputs } from "./types.ts";
import { storeVariants } from "./variants/variants.ts";
import { houseWays } from "./variants/ways.ts";

interface StoreStudy {
  readonly store: StoreInputs;
  readonly climate: ClimateYear;
  readonly soil: SoilInputs;
  readonly house: HouseInputs;
  readonly tubes: TubesInputs;
}

interface StoreEarlier {
  readonly soil: SoilResult;
  readonly tubes: TubesResult;
  readonly headers: HeadersResult;
  readonly fan: FanResult;
}

const AFTER = ["soil", "tubes", "headers", "fan"] as const;

/** Slices along the tubes in comparisons of many stores: within 1 % of the heat of eight. */
const COMPARISON_SLICES = 3;

/** Footing and heater decide nothing here: the house runs free, or is held without limit. */
function takes(study: StoreStudy, { soil, tubes, headers, fan }: StoreEarlier): StoreRequest {
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
    fan: { airFlow: fan.airFlow, power: fan.power, density: fan.density },
  };
}

/** The same store in fewer slices: comparisons run a dozen settled years. */
function takesCoarse(study: StoreStudy, earlier: StoreEarlier): StoreRequest {
  const slices = Math.min(study.store.slices, COMPARISON_SLICES);
  return takes({ ...study, store: { ...study.store, slices } }, earlier);
}

/** House, tubes and soil together, hour by hour, until the year repeats. */
export const store = chapter({
  name: "store",
  section: { fields: storeFields },
  after: AFTER,
  takes,
  compute: storeChapter,
  figures: storeFigures,
  extras: {
    /** With and without store and curtain, on a coarser store. */
    ways: extra({
      after: AFTER,
      takes: takesCoarse,
      compute: (request: StoreRequest) => houseWays(request),
    }),
    /** The store built or run otherwise, on a coarser store. */
    variants: extra({
      after: AFTER,
      takes: takesCoarse,
      compute: (request: StoreRequest) => storeVariants(request),
    }),
  },
});
