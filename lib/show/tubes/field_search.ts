/** Fields around the one of the study, searched with the study's own soil, fan and hours. @module */
import { mean } from "d3-array";
import type { FanResult } from "../../fan/mod.ts";
import type { HouseResult } from "../../house/mod.ts";
import type { SoilResult } from "../../soil/mod.ts";
import type { StoreResult } from "../../store/types.ts";
import { DESIGN_AIR_TEMPERATURE, meanPressure, type Study } from "../../study/mod.ts";
import {
  DEMO_SEARCH_PRICES,
  type SearchAround,
  searchAround,
  type SearchPrices,
  type TubesResult,
} from "../../tubes/mod.ts";
import { INLET_SWING } from "./tube_variants.ts";

/** Results the search takes from. */
export interface SearchSources {
  /** result of the soil chapter */
  readonly soil: SoilResult;
  /** result of the house chapter */
  readonly house: HouseResult;
  /** result of the tubes chapter */
  readonly tubes: TubesResult;
  /** result of the fan chapter */
  readonly fan: FanResult;
  /** result of the store chapter: hours that the fan runs */
  readonly store: StoreResult;
}

/** Mean hours a day that the fan runs on the days on which it runs at all. */
export function fanHoursPerDay(store: StoreResult): number {
  const { fanShare } = store.year;
  const days = Array.from({ length: 365 }, (_, day) => {
    let hours = 0;
    for (let hour = 24 * day; hour < 24 * day + 24; hour++) hours += Math.abs(fanShare[hour]!);
    return hours;
  }).filter((hours) => hours > 0.1);
  return days.length === 0 ? 0 : mean(days)!;
}

/**
 * Searches tube, count, length, spacing, layers and depth around the study.
 *
 * @param study the study
 * @param sources results of its chapters
 * @param prices tubes, ends and digging; the demo farm's invented ones where not given
 */
export function fieldSearch(
  study: Study,
  sources: SearchSources,
  prices: SearchPrices = DEMO_SEARCH_PRICES,
): SearchAround {
  const { soil, house, tubes, fan, store } = sources;
  const { conductivity, heatCapacity } = soil.properties;
  return searchAround(study.tubes, {
    house: house.geometry,
    footingDepth: study.house.footingDepth,
    pressure: meanPressure(study),
    airTemperature: DESIGN_AIR_TEMPERATURE,
    soil: { conductivity, heatCapacity },
    swing: INLET_SWING,
    otherPressure: Math.max(0, fan.pressure - tubes.pressureDrop),
    fanEfficiency: fan.efficiency,
    fanHours: fanHoursPerDay(store),
    prices,
  });
}
