/** Odds over many winters. @module */
import type { PairedWinter } from "../../store/mod.ts";
import type { Banded, PairedDifference } from "./statistics.ts";

/** Where the spread between winters comes from. */
export type SpreadSource = "published deviations" | "usual rule" | "measured winters";

/** One thing of all winters, with the store or without; bad winters at the far end. */
export interface WinterSpread {
  /** value that half of the winters stay below, with the band of 90 % */
  readonly median: Banded;
  /** value that one winter in ten passes on the bad side; null with fewer than 50 winters */
  readonly rare10: Banded | null;
  /** value that one winter in thirty passes on the bad side; null with fewer than 150 winters */
  readonly rare30: Banded | null;
}

/** A spread with the store and without. */
export interface SpreadPair {
  /** with the store */
  readonly withStore: WinterSpread;
  /** without it */
  readonly without: WinterSpread;
}

/** How often a winter falls below a limit, shares of the winters, 0 to 1. */
export interface LimitChance {
  /** not for an hour, with the band of 95 % */
  readonly never: Banded;
  /** for more than a day */
  readonly overOneDay: Banded;
  /** for more than three days */
  readonly overThreeDays: Banded;
  /** years from one winter with such an hour to the next, on the mean; null where there was none */
  readonly returnPeriod: number | null;
  /** h in a winter */
  readonly hours: WinterSpread;
  /** h of the longest spell */
  readonly longestSpell: WinterSpread;
  /** date of the first such hour, of the middle winter of those that have one; null without any */
  readonly first: string | null;
  /** date of the last one, likewise */
  readonly last: string | null;
}

/** One limit of the crop, with the store and without. */
export interface LimitOdds {
  /** which limit */
  readonly name: "freezing" | "damage" | "killing" | "growth";
  /** degC */
  readonly limit: number;
  /** with the store */
  readonly withStore: LimitChance;
  /** without it */
  readonly without: LimitChance;
}

/** One place in the order of all winters, those with the store and those without ordered apart. */
export interface RankedWinter {
  /** share of the winters that are at least as bad, 0 to 1 */
  readonly share: number;
  /** with the store, in the unit of what is ordered */
  readonly withStore: number;
  /** without, in the same unit */
  readonly without: number;
}

/** Money lost with the crop in a winter on the mean, in the currency of the prices. */
export interface CropLoss {
  /** money, with the store */
  readonly withStore: number;
  /** money, without */
  readonly without: number;
  /** currency of the prices; null where the study names no list */
  readonly currency: string | null;
}

/** What many winters say. */
export interface WinterOdds {
  /** number of winters */
  readonly winters: number;
  /** where the spread between them comes from */
  readonly spread: SpreadSource;
  /** whether the normals were taken from the one year of a file */
  readonly normalsOfOneYear: boolean;
  /** degC */
  readonly coldestHour: SpreadPair;
  /** degC, outdoors */
  readonly coldestOutdoors: WinterSpread;
  /** kWh to hold the set point */
  readonly backupHeat: SpreadPair;
  /** W, highest hour of the heater that holds it */
  readonly heaterPeak: SpreadPair;
  /** K that the store adds to the coldest hour, winter by winter */
  readonly coldestHourGain: PairedDifference;
  /** kWh of heat that the store saves, winter by winter */
  readonly savedHeat: PairedDifference;
  /** limits of the crop, freezing first */
  readonly limits: readonly LimitOdds[];
  /** chance of a killing hour times the value of the crop; null where the crop has no value given */
  readonly cropLoss: CropLoss | null;
  /** shares of winters in which the study's own year has a warmer coldest hour than they */
  readonly colderThanYear: { readonly withStore: number; readonly without: number };
  /** degC, coldest hours, the coldest first */
  readonly coldestFirst: readonly RankedWinter[];
  /** h in which plants die, the most first */
  readonly mostKillingFirst: readonly RankedWinter[];
  /** every winter */
  readonly list: readonly PairedWinter[];
}
