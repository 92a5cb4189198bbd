/** What the store earns against a heater alone. @module */
import { cumsum as runningSum } from "d3-array";
import { compareCosts, type Earnings, levelisedCost, yearlyGains } from "./money/comparison.ts";
import type { CostPlan, MoneyTerms } from "./money/life_cycle.ts";
import { heatOnly, type PlanParts, storePlan } from "./money/plans.ts";
import type { CostRow, Costs } from "./prices/costs.ts";
import type { YearlyEnergy } from "./request.ts";
import type { MoneyYear, StoreEarnings } from "./types.ts";

/** All that the store's money hangs on; money in the currency of the prices. */
export interface StoreMoney {
  /** money of the first cost before grants */
  readonly first: number;
  /** money given towards it */
  readonly grant: number;
  /** share of the first cost spent on upkeep each year */
  readonly upkeep: number;
  /** quantities with costs and lives */
  readonly rows: readonly CostRow[];
  /** kWh a year */
  readonly energy: YearlyEnergy;
  /** prices of energy, rate and years */
  readonly parts: PlanParts;
}

/** The store judged by its money. */
export interface JudgedMoney {
  /** the store and a heater alone as plans */
  readonly plan: CostPlan;
  /** a heater alone */
  readonly base: CostPlan;
  /** savings, ratios and paybacks */
  readonly earned: Earnings;
  /** money of the first cost less grants */
  readonly capital: number;
  /** money for a kWh of the heat saved; null where none is */
  readonly costOfHeat: number | null;
}

/** Judges the store by its money. */
export function judgeMoney(money: StoreMoney): JudgedMoney {
  const { first, grant, upkeep, rows, energy, parts } = money;
  const capital = first - grant;
  const plan = storePlan({
    initial: capital,
    rows,
    backupHeat: energy.backupHeat,
    fanEnergy: energy.fanEnergy,
    upkeep: first * upkeep,
  }, parts);
  const base = heatOnly(energy.backupHeatNoFan, parts);
  const saved = energy.backupHeatNoFan - energy.backupHeat;
  return {
    plan,
    base,
    earned: compareCosts(plan, base, parts.terms),
    capital,
    costOfHeat: levelisedCost({ ...plan, yearly: plan.yearly.slice(1) }, saved, parts.terms),
  };
}

/** What the store earns, with the balance year by year. */
export function storeEarnings(money: StoreMoney, costs: Costs): StoreEarnings {
  const { plan, base, earned, capital, costOfHeat } = judgeMoney(money);
  return {
    ...earned,
    capital,
    capitalOwnLabour: costs.own === null ? null : costs.own - money.grant,
    capitalHiredLabour: costs.hired === null ? null : costs.hired - money.grant,
    costOfHeat,
    breakEvenFuel: breakEvenFuel(earned),
    cashFlow: cashFlow(plan, base, money.parts.terms),
  };
}

/**
 * Ratio of the fuel's price to today's at which net savings, straight in it, meet nought; null where
 * no fuel is saved.
 */
export function breakEvenFuel({ base, plan, netSavings }: Earnings): number | null {
  const fuelSaved = base.yearly[0]! - plan.yearly[0]!;
  return fuelSaved > 0 ? Math.max(0, 1 - netSavings / fuelSaved) : null;
}

function cashFlow(plan: CostPlan, base: CostPlan, terms: MoneyTerms): MoneyYear[] {
  const balance = (rate: number) => [
    ...runningSum([base.initial - plan.initial, ...yearlyGains(plan, base, { ...terms, rate })]),
  ];
  const undiscounted = balance(0);
  return balance(terms.rate).map((money, year) => ({
    year,
    balance: money,
    undiscounted: undiscounted[year]!,
  }));
}
