/** The worth chapter: what the store costs and earns, and whether to dig. @module */
import { cumsum as runningSum, sum } from "d3-array";
import {
  type Alternative,
  measureAlternative,
  type PricedMeasure,
  storeAlternative,
} from "./alternatives.ts";
import { compareCosts, type Earnings, levelisedCost, yearlyGains } from "./money/comparison.ts";
import type { CostPlan, MoneyTerms } from "./money/life_cycle.ts";
import { heatOnly, type PlanParts, storePlan } from "./money/plans.ts";
import { worthNotices } from "./notices.ts";
import type { WorthRequest } from "./request.ts";
import { type Costs, priceQuantities } from "./prices/costs.ts";
import { findFuel, type Fuel } from "./prices/fuels.ts";
import { findPrice } from "./prices/price_list.ts";
import { quantityTakeOff } from "./quantities/take_off.ts";
import type { MoneyYear, StoreEarnings, WorthInputs, WorthResult } from "./types.ts";
import { giveVerdict } from "./verdict.ts";

/** Prices of energy at the house, money for a kWh; null where the list has none. */
interface EnergyPrices {
  readonly heat: number | null;
  readonly electricity: number | null;
  readonly missing: readonly string[];
}

/** Costs, earnings and verdict of the study's store. */
export function worthChapter(request: WorthRequest): WorthResult {
  const { inputs, field, energy } = request;
  const quantities = quantityTakeOff(field);
  const costs = inputs.prices === null
    ? null
    : priceQuantities(quantities, inputs.prices, inputs.contingency);
  const fuel = findFuel(inputs.fuel);
  const prices = energyPrices(inputs, fuel);
  const missing = inputs.prices === null ? ["worth.prices"] : [
    ...costs!.missing.filter((id) => inputs.labour === "hired" || id !== "labour"),
    ...prices.missing,
  ];
  const parts = planParts(inputs, prices);
  const earnings = costs === null || parts === null ? null : storeEarnings(request, costs, parts);
  const savedHeat = energy.backupHeatNoFan - energy.backupHeat;
  const bought = savedHeat / inputs.efficiency;
  const alternatives = alternativesOf(request, earnings, parts);
  const verdict = giveVerdict({
    faults: request.faults,
    savedHeat,
    netSavings: earnings?.netSavings ?? null,
    costOfHeat: earnings?.costOfHeat ?? null,
    heatPrice: prices.heat,
    missing,
    measures: alternatives.filter(({ kind }) => kind === "house"),
  });
  const result = {
    quantities,
    currency: inputs.prices?.currency ?? null,
    costs,
    heatPrice: prices.heat,
    electricityPrice: prices.electricity,
    fuel: fuel.name,
    fuelSaved: { amount: bought / fuel.heatingValue, unit: fuel.unit },
    carbonSaved: bought * (fuel.carbon ?? inputs.gridCarbon) - energy.fanEnergy * inputs.gridCarbon,
    earnings,
    missing,
    alternatives,
    verdict,
  };
  return { ...result, notices: worthNotices(result, request) };
}

function energyPrices({ prices, efficiency }: WorthInputs, fuel: Fuel): EnergyPrices {
  if (prices === null) return { heat: null, electricity: null, missing: [] };
  const electric = findPrice(prices, "electricity", "kWh");
  const bought = fuel.carbon === null ? electric : findPrice(prices, `fuel:${fuel.id}`, fuel.unit);
  return {
    heat: bought === null ? null : bought.price / (fuel.heatingValue * efficiency),
    electricity: electric?.price ?? null,
    missing: [
      ...(bought === null && fuel.carbon !== null ? [`fuel:${fuel.id}`] : []),
      ...(electric === null ? ["electricity"] : []),
    ],
  };
}

/** Prices and terms of all plans; null where energy has no price. */
function planParts(inputs: WorthInputs, { heat, electricity }: EnergyPrices): PlanParts | null {
  if (heat === null || electricity === null) return null;
  return {
    heat: { price: heat, escalation: inputs.fuelEscalation },
    electricity: { price: electricity, escalation: inputs.electricityEscalation },
    terms: { rate: inputs.discountRate, years: inputs.years },
  };
}

/** The store and every measure on the house, the cheapest kilowatt-hour first, unpriced ones last. */
function alternativesOf(
  { inputs, energy, measures, coldestHourGain }: WorthRequest,
  earnings: StoreEarnings | null,
  parts: PlanParts | null,
): readonly Alternative[] {
  const saved = energy.backupHeatNoFan - energy.backupHeat;
  const store = storeAlternative({ saved, coldestHourGain }, earnings);
  const { prices } = inputs;
  const house = measures.map((measure): Alternative =>
    prices === null || parts === null
      ? { ...unpriced(measure), capital: null, costOfHeat: null, netSavings: null }
      : measureAlternative(measure, energy.backupHeatNoFan, prices, parts)
  );
  const place = ({ costOfHeat }: Alternative) => costOfHeat ?? Infinity;
  return [store, ...house].toSorted((a, b) => place(a) < place(b) ? -1 : +(place(a) > place(b)));
}

function unpriced({ name, change, saved, coldestHourGain }: PricedMeasure) {
  return { name, kind: "house", change, saved, coldestHourGain } as const;
}

/** What the store earns against a heater alone; null where a price it needs is missing. */
function storeEarnings(
  { inputs, energy }: WorthRequest,
  costs: Costs,
  parts: PlanParts,
): StoreEarnings | null {
  const first = inputs.labour === "own" ? costs.own : costs.hired;
  if (first === null) return null;
  const { terms } = parts;
  const capital = first - inputs.grant;
  const plan = storePlan({
    initial: capital,
    rows: costs.rows,
    backupHeat: energy.backupHeat,
    fanEnergy: energy.fanEnergy,
    upkeep: first * inputs.upkeep,
  }, parts);
  const base = heatOnly(energy.backupHeatNoFan, parts);
  const earned = compareCosts(plan, base, terms);
  const saved = energy.backupHeatNoFan - energy.backupHeat;
  return {
    ...earned,
    capital,
    capitalOwnLabour: costs.own === null ? capital : costs.own - inputs.grant,
    capitalHiredLabour: costs.hired === null ? capital : costs.hired - inputs.grant,
    costOfHeat: levelisedCost({ ...plan, yearly: plan.yearly.slice(1) }, saved, terms),
    breakEvenFuel: breakEven(earned),
    cashFlow: cashFlow(plan, base, terms),
  };
}

/** Net savings are straight in the fuel's price: where do they meet nought? */
function breakEven({ base, plan, netSavings }: Earnings): number | null {
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

/** Money spent by part of the work, the largest first; the house's own board left out. */
export function costsByPart({ rows }: Costs): readonly { part: string; cost: number }[] {
  const parts = [...new Set(rows.map(({ part }) => part))].filter((part) => part !== "house");
  return parts.map((part) => ({
    part,
    cost: sum(rows.filter((row) => row.part === part), ({ cost }) => cost ?? 0),
  })).toSorted((a, b) => b.cost - a.cost);
}
