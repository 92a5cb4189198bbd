/** What many winters with a store and without say of chances. @module */
import { ascending, descending, median } from "d3-array";
import { FIRST_OF_JULY, HOURS_PER_YEAR, requireInRange } from "../../basics/mod.ts";
import { dateAfterMidsummer } from "../../climate/mod.ts";
import type { HouseWinter, PairedWinter } from "../../store/mod.ts";
import { chance, pairedDifference, rareValue } from "./statistics.ts";
import type {
  CropLoss,
  LimitChance,
  LimitOdds,
  RankedWinter,
  SpreadPair,
  SpreadSource,
  WinterOdds,
  WinterSpread,
} from "./types.ts";

/** A value that one winter in some passes is stated from five times as many winters on. */
const WINTERS_BEHIND = 5;
const DAY = 24;

/** How the winters were made and what they are held against. */
export interface OddsFacts {
  /** where the spread between winters comes from */
  readonly spread: SpreadSource;
  /** whether the normals were taken from one year */
  readonly normalsOfOneYear: boolean;
  /** money that a crop is worth, in the currency of the prices; null where not given */
  readonly cropValue: number | null;
  /** currency of the prices; null where the study names no list */
  readonly currency: string | null;
  /** degC, coldest hour of the study's own year */
  readonly year: { readonly withStore: number; readonly without: number };
}

/**
 * Chances, return periods and rare values of many winters, paired by winter.
 *
 * @param list the winters, at least 10 where they were made, 5 where they were measured
 * @param facts how they were made
 */
export function winterOdds(list: readonly PairedWinter[], facts: OddsFacts): WinterOdds {
  const least = facts.spread === "measured winters" ? 5 : 10;
  requireInRange("number of winters", list.length, least, 1e6, "winters");
  const of = (value: (house: HouseWinter) => number) => ({
    withStore: list.map(({ withStore }) => value(withStore)),
    without: list.map(({ without }) => value(without)),
  });
  const coldest = of(({ coldestHour }) => coldestHour);
  const heat = of(({ backupHeat }) => backupHeat);
  const peak = of(({ heaterPeak }) => heaterPeak);
  const limits = (["freezing", "damage", "killing", "growth"] as const).map((name) =>
    limitOdds(name, list)
  );
  const colder = (values: readonly number[], year: number) =>
    values.filter((value) => value < year).length / values.length;
  return {
    winters: list.length,
    spread: facts.spread,
    normalsOfOneYear: facts.normalsOfOneYear,
    coldestHour: pairOf(coldest, "low"),
    coldestOutdoors: spreadOf(list.map(({ coldestOutdoors }) => coldestOutdoors), "low"),
    backupHeat: pairOf(heat, "high"),
    heaterPeak: pairOf(peak, "high"),
    coldestHourGain: pairedDifference(coldest.withStore, coldest.without),
    savedHeat: pairedDifference(heat.without, heat.withStore),
    limits,
    cropLoss: cropLoss(limits, facts),
    colderThanYear: {
      withStore: colder(coldest.withStore, facts.year.withStore),
      without: colder(coldest.without, facts.year.without),
    },
    coldestFirst: ranked(coldest, ascending),
    mostKillingFirst: ranked(of(({ crop }) => crop.killing.hours), descending),
    list,
  };
}

/** One figure of every winter, with the store and without. */
type BothWays = Readonly<Record<"withStore" | "without", readonly number[]>>;

/** The end at which winters are bad. */
type BadEnd = "low" | "high";

/** Middle and rare values, rare ones as far as the winters carry them. */
function spreadOf(values: readonly number[], bad: BadEnd): WinterSpread {
  const rare = (period: number) =>
    values.length < WINTERS_BEHIND * period
      ? null
      : rareValue(values, bad === "low" ? 1 / period : 1 - 1 / period);
  return { median: rareValue(values, 0.5), rare10: rare(10), rare30: rare(30) };
}

function pairOf(
  { withStore, without }: BothWays,
  bad: BadEnd,
): SpreadPair {
  return { withStore: spreadOf(withStore, bad), without: spreadOf(without, bad) };
}

function limitOdds(name: LimitOdds["name"], list: readonly PairedWinter[]): LimitOdds {
  return {
    name,
    limit: list[0]!.withStore.crop[name].limit,
    withStore: limitChance(list.map(({ withStore }) => withStore.crop[name])),
    without: limitChance(list.map(({ without }) => without.crop[name])),
  };
}

function limitChance(years: readonly HouseWinter["crop"]["killing"][]): LimitChance {
  const hours = years.map((year) => year.hours);
  const count = (test: (hours: number) => boolean) =>
    chance(hours.filter(test).length, hours.length);
  const never = count((value) => value === 0);
  return {
    never,
    overOneDay: count((value) => value > DAY),
    overThreeDays: count((value) => value > 3 * DAY),
    returnPeriod: never.value < 1 ? 1 / (1 - never.value) : null,
    hours: spreadOf(hours, "high"),
    longestSpell: spreadOf(years.map(({ longestSpell }) => longestSpell), "high"),
    first: middleDate(years.map(({ first }) => first)),
    last: middleDate(years.map(({ last }) => last)),
  };
}

/** Date of the middle one of hours of the year, counted from 1 July on. */
function middleDate(hours: readonly (number | null)[]): string | null {
  const sinceJuly = hours.filter((hour) => hour !== null)
    .map((hour) => (hour - FIRST_OF_JULY + HOURS_PER_YEAR) % HOURS_PER_YEAR);
  const middle = median(sinceJuly);
  if (middle === undefined) return null;
  return dateAfterMidsummer((Math.round(middle) + FIRST_OF_JULY) % HOURS_PER_YEAR);
}

/** Both ways ordered each by itself. */
function ranked(
  { withStore, without }: BothWays,
  worstFirst: (a: number, b: number) => number,
): readonly RankedWinter[] {
  const [one, other] = [withStore.toSorted(worstFirst), without.toSorted(worstFirst)];
  return one.map((value, place) => ({
    share: (place + 1) / (one.length + 1),
    withStore: value,
    without: other[place]!,
  }));
}

/** Chance of a killing hour times the value. */
function cropLoss(
  limits: readonly LimitOdds[],
  { cropValue: value, currency }: OddsFacts,
): CropLoss | null {
  if (value === null) return null;
  const killing = limits.find(({ name }) => name === "killing")!;
  return {
    withStore: value * (1 - killing.withStore.never.value),
    without: value * (1 - killing.without.never.value),
    currency,
  };
}
