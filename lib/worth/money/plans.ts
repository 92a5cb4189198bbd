/**
 * The store and doing nothing as plans of money.
 *
 * @module
 */
import { escalatingPresentValueFactor, uniformPresentValueFactor } from "./factors.ts";
import type { CostRow } from "../prices/costs.ts";
import { type CostPlan, type MoneyTerms, wearOut, type YearlyAmount } from "./life_cycle.ts";

/** Price of energy at the house and how it rises. */
export interface EnergyPrice {
  /** money for a kWh: of heat for a fuel, of electricity for the fans */
  readonly price: number;
  /** rise a year beyond inflation, share */
  readonly escalation: number;
}

/** What the plans are made of; money in one currency. */
export interface PlanParts {
  /** money for a kWh of heat from the back-up heater */
  readonly heat: EnergyPrice;
  /** money for a kWh of electricity */
  readonly electricity: EnergyPrice;
  /** rate and years */
  readonly terms: MoneyTerms;
}

/** A plan that only buys heat. */
export function heatOnly(heat: number, parts: PlanParts): CostPlan {
  return { initial: 0, replacements: [], residual: 0, yearly: [fuel(heat, parts)] };
}

function fuel(heat: number, { heat: { price, escalation } }: PlanParts): YearlyAmount {
  return { name: "fuel of the back-up heater", amount: heat * price, escalation };
}

/**
 * Worth of a kilowatt-hour of heat that need not be bought, levelised over the years: what saves one
 * for less pays.
 *
 * p·UPV*(e)/UPV
 *
 * Source: quotient of present values, as in life-cycle costing [nist-hb135-1995].
 *
 * @param parts price of heat and its rise, rate and years
 * @returns money for a kWh; the price of today where it does not rise
 */
export function heatWorth({ heat: { price, escalation }, terms }: PlanParts): number {
  const { rate, years } = terms;
  return escalation === 0 ? price : price * escalatingPresentValueFactor(rate, escalation, years) /
    uniformPresentValueFactor(rate, years);
}

/** What the store costs and still buys. */
export interface StoreSpending {
  /** first cost less grants, in the currency of the prices */
  readonly initial: number;
  /** quantities with their costs and lives */
  readonly rows: readonly CostRow[];
  /** kWh a year of heat still bought */
  readonly backupHeat: number;
  /** kWh a year for the fans */
  readonly fanEnergy: number;
  /** money a year for upkeep */
  readonly upkeep: number;
}

/**
 * The plan of the store: what wears out is bought again, and what is left of the last one bought
 * counts at the end, in even parts over its life.
 */
export function storePlan(spending: StoreSpending, parts: PlanParts): CostPlan {
  const { terms, electricity } = parts;
  const bought = spending.rows.flatMap(({ part, item, cost, life }) =>
    part === "house" || cost === null ? [] : [{ name: item, cost, life }]
  );
  return {
    initial: spending.initial,
    ...wearOut(bought, terms.years),
    yearly: [
      fuel(spending.backupHeat, parts),
      {
        name: "electricity of the fans",
        amount: spending.fanEnergy * electricity.price,
        escalation: electricity.escalation,
      },
      { name: "upkeep", amount: spending.upkeep, escalation: 0 },
    ],
  };
}
