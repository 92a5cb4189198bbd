/** The worth chapter: what the store costs and earns, and whether to dig. @module */
import { type Alternative, measureAlternative, storeAlternative } from "./alternatives.ts";
import { moneyDoubt } from "./doubt/money_doubt.ts";
import { storeEarnings, type StoreMoney } from "./earnings.ts";
import { heatWorth, type PlanParts } from "./money/plans.ts";
import { worthNotices } from "./notices.ts";
import type { WorthRequest } from "./request.ts";
import { type Costs, priceQuantities } from "./prices/costs.ts";
import { findFuel, type Fuel } from "./prices/fuels.ts";
import { findPrice } from "./prices/price_list.ts";
import { quantityTakeOff } from "./quantities/take_off.ts";
import type { MaterialQuantity } from "./quantities/types.ts";
import type { StoreEarnings, WorthInputs, WorthResult } from "./types.ts";
import { giveVerdict } from "./verdict.ts";

/** Prices of energy at the house, money for a kWh; null where the list has none. */
export interface EnergyPrices {
  readonly heat: number | null;
  readonly electricity: number | null;
  readonly missing: readonly string[];
}

/** Costs, earnings and verdict of the study's store. */
export function worthChapter(request: WorthRequest): WorthResult {
  const { inputs, energy } = request;
  const { quantities, costs, fuel, prices, parts } = worthMoney(request);
  const missing = inputs.prices === null ? ["worth.prices"] : [
    ...costs!.missing.filter((id) => inputs.labour === "hired" || id !== "labour"),
    ...prices.missing,
  ];
  const money = costs === null || parts === null ? null : storeMoney(request, costs, parts);
  const earnings = money === null ? null : storeEarnings(money, costs!);
  const savedHeat = energy.backupHeatNoFan - energy.backupHeat;
  const bought = savedHeat / inputs.efficiency;
  const alternatives = alternativesOf(request, earnings, parts);
  const facts = {
    faults: request.faults,
    savedHeat,
    costOfHeat: earnings?.costOfHeat ?? null,
    heatWorth: parts === null ? null : heatWorth(parts),
    missing,
    measures: alternatives.filter(({ kind }) => kind === "house"),
  };
  const verdict = giveVerdict(facts);
  const doubt = money === null
    ? null
    : moneyDoubt(money, inputs, (changed) => giveVerdict({ ...facts, ...changed }).word);
  const result = {
    quantities,
    currency: inputs.prices?.currency ?? null,
    costs,
    heatPrice: prices.heat,
    heatWorth: facts.heatWorth,
    electricityPrice: prices.electricity,
    fuel: fuel.name,
    fuelSaved: { amount: bought / fuel.heatingValue, unit: fuel.unit },
    carbonSaved: bought * (fuel.carbon ?? inputs.gridCarbon) - energy.fanEnergy * inputs.gridCarbon,
    earnings,
    missing,
    alternatives,
    designFaults: request.faults,
    verdict,
    doubt,
  };
  return { ...result, notices: worthNotices(result, request) };
}

/** Quantities, costs and prices of a study, whatever the year with the store says. */
export interface WorthMoney {
  readonly quantities: readonly MaterialQuantity[];
  /** null without a price list */
  readonly costs: Costs | null;
  readonly fuel: Fuel;
  readonly prices: EnergyPrices;
  /** null where energy has no price */
  readonly parts: PlanParts | null;
}

/** Prices what the study buys. */
export function worthMoney({ inputs, field }: WorthRequest): WorthMoney {
  const quantities = quantityTakeOff(field);
  const costs = inputs.prices === null
    ? null
    : priceQuantities(quantities, inputs.prices, inputs.contingency);
  const fuel = findFuel(inputs.fuel);
  const prices = energyPrices(inputs, fuel);
  return { quantities, costs, fuel, prices, parts: planParts(inputs, prices) };
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

/** What the store's money hangs on; null where a price of what is bought is missing. */
export function storeMoney(
  { inputs, energy }: WorthRequest,
  costs: Costs,
  parts: PlanParts,
): StoreMoney | null {
  const first = inputs.labour === "own" ? costs.own : costs.hired;
  if (first === null) return null;
  return { first, grant: inputs.grant, upkeep: inputs.upkeep, rows: costs.rows, energy, parts };
}

/** The store and every measure on the house, the cheapest kilowatt-hour first, unpriced ones last. */
function alternativesOf(
  { inputs, energy, measures, coldestHourGain, cropHoursAvoided }: WorthRequest,
  earnings: StoreEarnings | null,
  parts: PlanParts | null,
): readonly Alternative[] {
  const saved = energy.backupHeatNoFan - energy.backupHeat;
  const store = storeAlternative({ saved, coldestHourGain, cropHoursAvoided }, earnings);
  const house = measures.map((measure) =>
    measureAlternative(measure, energy.backupHeatNoFan, inputs.prices, parts)
  );
  const place = ({ costOfHeat }: Alternative) => costOfHeat ?? Infinity;
  return [store, ...house].toSorted((a, b) => place(a) < place(b) ? -1 : +(place(a) > place(b)));
}
