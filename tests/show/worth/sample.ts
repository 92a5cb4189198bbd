/** A made-up judgement: a store that pays, with one measure that is cheaper. */
import type {
  DesignRow,
  DesignSearch,
  MeasureLadder,
  OtherWays,
  StoreEarnings,
  WorthResult,
} from "../../../lib/worth/mod.ts";
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
  heatWorth: 0.18,
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
      cropHoursAvoided: 100,
      capital: 800,
      costOfHeat: 0.04,
      costOfHour: 1.2,
      netSavings: 5000,
    },
    {
      name: "heat store",
      kind: "store",
      change: "as planned",
      saved: 3300,
      coldestHourGain: 5,
      cropHoursAvoided: 500,
      capital: 6000,
      costOfHeat: 0.15,
      costOfHour: 0.99,
      netSavings: 1500,
    },
    {
      name: "water barrels",
      kind: "house",
      change: "more water",
      saved: -100,
      coldestHourGain: 1,
      cropHoursAvoided: 0,
      capital: null,
      costOfHeat: null,
      costOfHour: null,
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

export const ladder = made<MeasureLadder>({
  asItIs: { heat: 11_000, fanEnergy: 0, hoursBelowCropLimit: 600 },
  rungs: [
    {
      name: "sealing",
      kind: "house",
      change: "leakage halved",
      capital: 800,
      capitalSoFar: 800,
      saved: 3000,
      savedSoFar: 3000,
      costOfHeat: 0.04,
      netSavings: 5000,
      netSavingsSoFar: 5000,
      cropHoursAvoided: 100,
      after: { heat: 8000, fanEnergy: 0, hoursBelowCropLimit: 500 },
    },
    {
      name: "heat store",
      kind: "store",
      change: "as planned",
      capital: 6000,
      capitalSoFar: 6800,
      saved: 2500,
      savedSoFar: 5500,
      costOfHeat: 0.17,
      netSavings: 300,
      netSavingsSoFar: 5300,
      cropHoursAvoided: 420,
      after: { heat: 5500, fanEnergy: 900, hoursBelowCropLimit: 80 },
    },
  ],
  withStore: true,
  currency: "crowns",
  rest: [
    {
      name: "water barrels",
      kind: "house",
      change: "more water",
      capital: null,
      saved: null,
      costOfHeat: null,
      why: "no price",
    },
    {
      name: "one more layer of glazing",
      kind: "house",
      change: "a to b",
      capital: 4000,
      saved: 900,
      costOfHeat: 0.31,
      why: "costs more than it saves",
    },
  ],
});

const heater = { own: false, capital: null, fuelCost: null, costOfHeat: null, costOfHour: null };
export const otherWays = made<OtherWays>({
  uses: [
    {
      name: "row cover over the crop",
      kind: "house",
      change: "drawn over at night",
      saved: 2000,
      coldestHourGain: 2,
      cropHoursAvoided: 300,
      capital: 700,
      costOfHeat: 0.09,
      costOfHour: 0.6,
      netSavings: 900,
    },
  ],
  stores: [
    {
      name: "heat store with a plate collector",
      kind: "store",
      change: "16 m² of perforated dark plate on the back wall before the intake",
      saved: 3500,
      coldestHourGain: 5.2,
      cropHoursAvoided: 510,
      capital: null,
      costOfHeat: null,
      costOfHour: null,
      netSavings: null,
      missing: ["collector-plate"],
    },
  ],
  fuels: [
    {
      ...heater,
      fuel: "propane",
      own: true,
      capital: 1900,
      fuelCost: 0.17,
      costOfHeat: 0.19,
      costOfHour: 3,
      missing: [],
    },
    { ...heater, fuel: "air-dry firewood", missing: ["fuel:wood", "heater:wood"] },
  ],
  heatWorth: 0.18,
  currency: "crowns",
});

const designRow = (changes: Partial<DesignRow>): DesignRow => ({
  choice: {
    tube: "corrugated-4in",
    count: 36,
    length: 22,
    spacing: 0.4,
    layers: 2,
    depth: 0.6,
    airFlow: 0.8,
    header: 0.45,
    fan: "duct-315",
    fans: 2,
    edgeBoard: false,
    chargeStart: 5,
    dischargeBelow: 7,
  },
  own: false,
  saved: 3000,
  cropHoursAvoided: 50,
  fanEnergy: 1200,
  capital: 5000,
  costOfHeat: 0.2,
  netSavings: -800,
  bestForHeat: true,
  bestForHours: true,
  breaks: null,
  ...changes,
});

const smallField = designRow({ capital: 3000, saved: 2000, costOfHeat: 0.15, netSavings: -200 });
const betterField = designRow({ capital: 5500, saved: 4500, cropHoursAvoided: 70 });
const ownField = designRow({
  own: true,
  capital: 6000,
  saved: 4000,
  cropHoursAvoided: 60,
  bestForHeat: false,
  bestForHours: false,
});

/** The study's own design costs more and saves less than another. */
export const designs: DesignSearch = {
  currency: "crowns",
  rows: [smallField, betterField, ownField],
  best: smallField,
  cheapest: smallField,
  givesUp: { moreHeat: betterField, sameHeat: betterField, fewerHours: null, sameHours: null },
  judged: 1234,
  refused: { "pit too deep": 40, "a tube gets too little air": 60 },
  runs: 3,
  savedResolution: 20,
  hoursResolution: 1,
};
