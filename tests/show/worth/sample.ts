/** A made-up judgement: a store that pays, with one measure that is cheaper. */
import type { StoreEarnings, WorthResult } from "../../../lib/worth/mod.ts";
import { made } from "../made.ts";

const cashFlow = Array.from({ length: 26 }, (_, year) => ({
  year,
  balance: -6000 + 300 * year,
  undiscounted: -6000 + 450 * year,
}));

export const earnings = made<StoreEarnings>({
  netSavings: 1500,
  extraInvestment: 6000,
  operationSaved: 7500,
  savingsToInvestment: 1.25,
  adjustedRateOfReturn: 0.039,
  simplePayback: 13.3,
  discountedPayback: 20,
  capital: 6000,
  capitalOwnLabour: 4000,
  capitalHiredLabour: 6000,
  costOfHeat: 0.15,
  breakEvenFuel: 0.85,
  cashFlow,
});

const row = { amount: 100, order: 105, price: 2, cost: 210, life: null, basis: "" };
export const worthResult = made<WorthResult>({
  quantities: [],
  currency: "crowns",
  costs: {
    rows: [
      { id: "tube:x", part: "tubes and headers", item: "tube, x", unit: "m", ...row },
      {
        id: "soil",
        part: "pit",
        item: "excavation",
        unit: "m³ bank",
        ...row,
        price: null,
        cost: null,
      },
    ],
    missing: [],
    bought: 210,
    labour: 60,
    contingency: 27,
    hired: 297,
    own: 231,
  },
  heatPrice: 0.18,
  electricityPrice: 0.19,
  fuel: "propane",
  fuelSaved: { amount: 600, unit: "L" },
  carbonSaved: 700,
  earnings,
  missing: [],
  alternatives: [
    {
      name: "sealing",
      kind: "house",
      change: "leakage halved",
      saved: 3000,
      coldestHourGain: 1,
      capital: 800,
      costOfHeat: 0.04,
      netSavings: 5000,
    },
    {
      name: "heat store",
      kind: "store",
      change: "as planned",
      saved: 3300,
      coldestHourGain: 5,
      capital: 6000,
      costOfHeat: 0.15,
      netSavings: 1500,
    },
    {
      name: "water barrels",
      kind: "house",
      change: "more water",
      saved: -100,
      coldestHourGain: 1,
      capital: null,
      costOfHeat: null,
      netSavings: null,
    },
  ],
  verdict: { word: "not yet", reason: "another measure comes first", first: ["sealing"] },
  doubt: {
    capital: [5000, 7000],
    netSavings: [-900, 4000],
    costOfHeat: [0.11, 0.2],
    payback: [9, null],
    breakEvenFuel: [0.6, 1.1],
    chanceVerdictFlips: 0.2,
    shares: [
      { input: "price of fuel", range: 0.3, first: 0.5, total: 0.55 },
      { input: "first cost", range: 0.2, first: 0.4, total: 0.45 },
    ],
  },
  notices: [],
});
