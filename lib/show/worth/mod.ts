/** What the store costs, what it earns, and whether to dig. @module */
export * from "./answer.ts";
export * from "./charts.ts";
export * from "./exercises.ts";
export * from "./tables.ts";
export {
  type Alternative,
  capitalRecoveryFactor,
  compareCosts,
  type CostPlan,
  type Costs,
  type Earnings,
  escalatingPresentValueFactor,
  levelisedCost,
  lifeCycleCost,
  type MaterialQuantity,
  type MoneyTerms,
  presentValueFactor,
  type PriceList,
  readPriceList,
  type StoreEarnings,
  uniformPresentValueFactor,
  type VerdictGiven,
  type WorthInputs,
  type WorthResult,
} from "../../worth/mod.ts";
