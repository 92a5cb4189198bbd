/** Number of tubes by rules of thumb, led by air and led by the heat of the store's own good days. @module */
import type { HouseResult } from "../house/types.ts";
import { airChangeFlow, flowLedCount, heatLedCount } from "../tubes/mod.ts";
import type { TubesInputs, TubesResult } from "../tubes/types.ts";
import { goodDay, winterDays } from "./good_days.ts";
import type { StoreYear } from "./types.ts";

/** h: a long winter night at middle latitudes */
export const NIGHT_HOURS = 14;
/** Above this a count says only that the rule does not fit. */
const TOO_MANY = 10_000;

/** One rule and its number of tubes. */
export interface TubeCountRow {
  /** what leads */
  readonly way: string;
  /** number of whole tubes; null where there would be ten thousand or more */
  readonly count: number | null;
  /** m of all of them; null likewise */
  readonly totalLength: number | null;
}

/** Rules of thumb side by side. */
export interface TubeCounts {
  /** rule by rule, the study's own number last */
  readonly rows: readonly TubeCountRow[];
  /** kWh that one metre took in on good days of the year (tenth best) */
  readonly goodDay: number;
  /** kWh that one metre took in on good winter days (fifth best) */
  readonly goodWinterDay: number;
  /** kWh that the house loses in a long night at the design temperature */
  readonly designNight: number;
}

/** What the rules take. */
export interface TubeCountQuestion {
  /** loss and volume of the house */
  readonly house: {
    readonly peakHeatLoss: HouseResult["peakHeatLoss"];
    readonly volume: number;
  };
  /** number of tubes of the study */
  readonly inputs: Pick<TubesInputs, "count">;
  /** one tube, m */
  readonly tubes: Pick<TubesResult, "totalLength" | "diameter" | "length">;
  /** hourly year of the store, W */
  readonly year: Pick<StoreYear, "sensible" | "latent">;
  /** degrees, north positive: decides which months are winter */
  readonly latitude: number;
}

/**
 * Number of tubes led by air flow and led by heat, side by side.
 *
 * The heat-led count takes the house's heat loss at the design temperature through a long night, and
 * the heat one metre took in on good days of the store run: the fifth best day of the three winter
 * months, and the tenth best of the year.
 *
 * @param question house, tubes and the year of the store
 */
export function tubeCounts(question: TubeCountQuestion): TubeCounts {
  const { house, inputs, tubes, year } = question;
  const night = house.peakHeatLoss * NIGHT_HOURS / 1000;
  const winter = goodDay(year, 5, winterDays(question.latitude)) / tubes.totalLength;
  const any = goodDay(year, 10) / tubes.totalLength;
  const byFlow = (changes: number, speed: number) =>
    flowLedCount(airChangeFlow(house.volume, changes), speed, tubes.diameter);
  const byHeat = (share: number, perMetre: number) =>
    perMetre > 0 ? heatLedCount(share * night, perMetre * tubes.length) : TOO_MANY;
  const row = (way: string, found: number): TubeCountRow => {
    const count = found < TOO_MANY ? found : null;
    return { way, count, totalLength: count === null ? null : count * tubes.length };
  };
  return {
    rows: [
      row("air flow: 5 house volumes an hour at 3 m/s", byFlow(5, 3)),
      row("air flow: 6 house volumes an hour at 2 m/s", byFlow(6, 2)),
      row("heat: a quarter of a design night, good days of the year", byHeat(0.25, any)),
      row("heat: a quarter of a design night, good winter days", byHeat(0.25, winter)),
      row("heat: all of a design night, good days of the year", byHeat(1, any)),
      row("this study", inputs.count),
    ],
    goodDay: any,
    goodWinterDay: winter,
    designNight: night,
  };
}
