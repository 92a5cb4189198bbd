/**
 * The verdict: dig, not yet, or no. The rule stands in docs/worth.md.
 *
 * @module
 */

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
  /** present value saved against a heater alone, money; null where a price is missing */
  readonly netSavings: number | null;
  /** money for a kWh that the store saves, levelised; null where a price is missing */
  readonly costOfHeat: number | null;
  /** money for a kWh of heat from the back-up heater; null where it has no price */
  readonly heatPrice: number | null;
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
  /** faults to mend, prices to find or measures to take first, the first to do first */
  readonly first: readonly string[];
}

/**
 * Decides.
 *
 * 1. The store saves no heat: no.
 * 2. The design has a fault: not yet, mend it.
 * 3. A price is missing: not yet, find it.
 * 4. Heating alone costs less over the years: no.
 * 5. A measure on the house saves a kilowatt-hour for less than the store does: not yet, it first.
 *    Only measures that themselves cost less than heating are named, here and beside a no.
 * 6. Otherwise dig.
 *
 * @param facts of the study
 */
export function giveVerdict(facts: VerdictFacts): VerdictGiven {
  const { savedHeat, faults, missing, netSavings, costOfHeat, heatPrice } = facts;
  if (savedHeat <= 0) return { word: "no", reason: "saves no heat", first: [] };
  if (faults.length > 0) return { word: "not yet", reason: "faults", first: faults };
  if (netSavings === null || costOfHeat === null || heatPrice === null) {
    return { word: "not yet", reason: "prices missing", first: missing };
  }
  const cheaper = cheaperMeasures(facts.measures, Math.min(costOfHeat, heatPrice));
  if (netSavings < 0) return { word: "no", reason: "a heater alone costs less", first: cheaper };
  if (cheaper.length > 0) {
    return { word: "not yet", reason: "another measure comes first", first: cheaper };
  }
  return { word: "dig", reason: "pays", first: [] };
}

/** Measures that save a kilowatt-hour for less, the cheapest first. */
function cheaperMeasures(measures: readonly RivalMeasure[], limit: number): string[] {
  return measures
    .filter((one): one is RivalMeasure & { costOfHeat: number } =>
      one.saved > 0 && one.costOfHeat !== null && one.costOfHeat < limit
    )
    .toSorted((a, b) => a.costOfHeat - b.costOfHeat)
    .map(({ name }) => name);
}
