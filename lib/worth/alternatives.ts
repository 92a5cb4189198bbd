/**
 * The store, a heater alone and the measures on the house on one axis.
 *
 * @module
 */
import type { RankedMeasure } from "../store/mod.ts";
import { compareCosts, levelisedCost } from "./money/comparison.ts";
import { wearOut } from "./money/life_cycle.ts";
import { heatOnly, type PlanParts } from "./money/plans.ts";
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
  /** h a year below the crop's killing limit that are avoided without a heater */
  readonly cropHoursAvoided: number;
  /** levelised cost of a kWh saved */
  readonly costOfHeat: number | null;
  /** levelised cost of an hour avoided; null where none is */
  readonly costOfHour: number | null;
  /** present value saved against a heater alone, money */
  readonly netSavings: number | null;
}

/** A measure as the ranking gives it. */
export type PricedMeasure =
  & Pick<
    RankedMeasure,
    "name" | "change" | "saved" | "coldestHourGain" | "cropHoursAvoided" | "work"
  >
  & {
    /** kWh a year that the fans of a store already dug need less; 0 unless given */
    readonly fanEnergySaved?: number;
  };

/** What a measure costs and earns, alone, against a heater alone; open where it has no price. */
export function measureAlternative(
  { name, change, saved, coldestHourGain, cropHoursAvoided, work, fanEnergySaved = 0 }:
    PricedMeasure,
  demand: number,
  list: PriceList | null,
  parts: PlanParts | null,
): Alternative {
  const measure = {
    name,
    kind: "house",
    change,
    saved,
    coldestHourGain,
    cropHoursAvoided,
  } as const;
  const price = work === null || list === null
    ? null
    : findPrice(list, `measure:${work.id}`, work.unit);
  if (work === null || price === null || parts === null) {
    return { ...measure, capital: null, costOfHeat: null, costOfHour: null, netSavings: null };
  }
  const { terms } = parts;
  const capital = price.price * work.amount;
  const worn = wearOut([{ name, cost: capital, life: price.life }], terms.years);
  const { price: electricity, escalation } = parts.electricity;
  const fans = {
    name: "electricity of the fans",
    amount: -fanEnergySaved * electricity,
    escalation,
  };
  const own = { initial: capital, ...worn, yearly: fanEnergySaved === 0 ? [] : [fans] };
  const plan = { ...own, yearly: [...heatOnly(demand - saved, parts).yearly, ...own.yearly] };
  return {
    ...measure,
    capital,
    costOfHeat: levelisedCost(own, saved, terms),
    costOfHour: levelisedCost(own, cropHoursAvoided, terms),
    netSavings: compareCosts(plan, heatOnly(demand, parts), terms).netSavings,
  };
}

/** The store as planned. */
export function storeAlternative(
  store: Pick<PricedMeasure, "saved" | "coldestHourGain" | "cropHoursAvoided">,
  earnings: Pick<Alternative, "capital" | "costOfHeat" | "netSavings"> | null,
): Alternative {
  return {
    name: "heat store",
    kind: "store",
    change: "as planned",
    saved: store.saved,
    coldestHourGain: store.coldestHourGain,
    cropHoursAvoided: store.cropHoursAvoided,
    capital: earnings?.capital ?? null,
    costOfHeat: earnings?.costOfHeat ?? null,
    costOfHour: costOfHour(store, earnings?.costOfHeat ?? null),
    netSavings: earnings?.netSavings ?? null,
  };
}

/** What is spent for the heat, spread over the hours. */
function costOfHour(
  { saved, cropHoursAvoided }: Pick<PricedMeasure, "saved" | "cropHoursAvoided">,
  costOfHeat: number | null,
): number | null {
  return costOfHeat === null || !(cropHoursAvoided > 0)
    ? null
    : costOfHeat * saved / cropHoursAvoided;
}
