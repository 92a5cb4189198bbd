/**
 * The verdict: dig, not yet, or no. The rule stands in docs/worth.md.
 *
 * @module
 */
import { nextStep, pays } from "./next_step.ts";

/** The three answers. */
export type VerdictWord = "dig" | "not yet" | "no";

/** A measure on the house that could come before the store. */
export interface RivalMeasure {
  /** name for the reader */
  readonly name: string;
  /** kWh a year that it saves, alone */
  readonly saved: number;
  /** money for a kWh saved, levelised; null where it has no price */
  readonly costOfHeat: number | null;
}

/** What the verdict is made of. */
export interface VerdictFacts {
  /** faults of the design that must be mended before anybody digs, each in a few words */
  readonly faults: readonly string[];
  /** kWh a year of back-up heat that the store saves */
  readonly savedHeat: number;
  /** money for a kWh that the store saves, levelised; null where a price is missing */
  readonly costOfHeat: number | null;
  /** money that a kWh of heat from the back-up heater is worth over the years; null without a price */
  readonly heatWorth: number | null;
  /** names of prices that are missing */
  readonly missing: readonly string[];
  /** measures still to be taken on the house */
  readonly measures: readonly RivalMeasure[];
}

/** Why a verdict was given. */
export type VerdictReason =
  | "saves no heat"
  | "faults"
  | "prices missing"
  | "a heater alone costs less"
  | "another measure comes first"
  | "pays";

/** The verdict with what decided it. */
export interface VerdictGiven {
  /** the answer */
  readonly word: VerdictWord;
  /** what decided it */
  readonly reason: VerdictReason;
  /** faults to mend or prices to find, the first to do first; or the measure that comes first */
  readonly first: readonly string[];
}

/**
 * Decides.
 *
 * 1. The store saves no heat: no.
 * 2. The design has a fault: not yet, mend it.
 * 3. A price is missing: not yet, find it.
 * 4. A kilowatt-hour that the store saves costs as much as one from the heater, or more: no.
 * 5. A measure on the house saves one for less than the store does: not yet, it first.
 * 6. Otherwise dig.
 *
 * The measure that is named, here and beside a no, is the first step of the ladder ({@link nextStep}).
 *
 * @param facts of the study
 */
export function giveVerdict(facts: VerdictFacts): VerdictGiven {
  const { savedHeat, faults, missing, costOfHeat, heatWorth } = facts;
  if (savedHeat <= 0) return { word: "no", reason: "saves no heat", first: [] };
  if (faults.length > 0) return { word: "not yet", reason: "faults", first: faults };
  if (costOfHeat === null || heatWorth === null) {
    return { word: "not yet", reason: "prices missing", first: missing };
  }
  const store = { name: "the store", saved: savedHeat, costOfHeat };
  const next = nextStep([store, ...facts.measures], heatWorth);
  const first = next === null || next === store ? [] : [next.name];
  if (!pays(store, heatWorth)) return { word: "no", reason: "a heater alone costs less", first };
  return next === store
    ? { word: "dig", reason: "pays", first }
    : { word: "not yet", reason: "another measure comes first", first };
}
