/**
 * The store, a heater alone and the measures on the house on one axis.
 *
 * @module
 */
import type { RankedMeasure } from "../store/mod.ts";
import { compareCosts, levelisedCost } from "./money/comparison.ts";
import { replacementYears } from "./money/life_cycle.ts";
import { heatOnly, type PlanParts, unusedLife } from "./money/plans.ts";
import { findPrice, type PriceList } from "./prices/price_list.ts";

/** One way to spend the money; money in the currency of the prices, null where it has no price. */
export interface Alternative {
  /** short name */
  readonly name: string;
  /** a measure on the house, or the store */
  readonly kind: "house" | "store";
  /** what is built, in words and numbers */
  readonly change: string;
  /** kWh a year of heat that need not be bought */
  readonly saved: number;
  /** K that the coldest hour gains without a heater */
  readonly coldestHourGain: number;
  /** first cost, money */
  readonly capital: number | null;
  /** levelised cost of a kWh saved */
  readonly costOfHeat: number | null;
  /** present value saved against a heater alone, money */
  readonly netSavings: number | null;
}

/** A measure as the ranking gives it. */
export type PricedMeasure = Pick<
  RankedMeasure,
  "name" | "change" | "saved" | "coldestHourGain" | "work"
>;

/** What a measure costs and earns, alone, against a heater alone. */
export function measureAlternative(
  measure: PricedMeasure,
  demand: number,
  list: PriceList,
  parts: PlanParts,
): Alternative {
  const { name, change, saved, coldestHourGain, work } = measure;
  const price = work === null ? null : findPrice(list, `measure:${work.id}`, work.unit);
  const open = { name, kind: "house", change, saved, coldestHourGain } as const;
  if (work === null || price === null) {
    return { ...open, capital: null, costOfHeat: null, netSavings: null };
  }
  const capital = price.price * work.amount;
  const { life } = price;
  const own = {
    initial: capital,
    replacements: life === null ? [] : replacementYears(life, parts.terms.years).map((year) => ({
      name,
      year,
      amount: capital,
    })),
    residual: life === null ? 0 : capital * unusedLife(life, parts.terms.years),
    yearly: [],
  };
  const plan = { ...own, yearly: heatOnly(demand - saved, parts).yearly };
  return {
    ...open,
    capital,
    costOfHeat: levelisedCost(own, saved, parts.terms),
    netSavings: compareCosts(plan, heatOnly(demand, parts), parts.terms).netSavings,
  };
}

/** The store as planned. */
export function storeAlternative(
  store: Pick<PricedMeasure, "saved" | "coldestHourGain">,
  earnings: Pick<Alternative, "capital" | "costOfHeat" | "netSavings"> | null,
): Alternative {
  return {
    name: "heat store",
    kind: "store",
    change: "as planned",
    saved: store.saved,
    coldestHourGain: store.coldestHourGain,
    capital: earnings?.capital ?? null,
    costOfHeat: earnings?.costOfHeat ?? null,
    netSavings: earnings?.netSavings ?? null,
  };
}
