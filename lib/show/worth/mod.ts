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
  type CostRow,
  type Costs,
  type Earnings,
  escalatingPresentValueFactor,
  levelisedCost,
  type LifeCycleCost,
  lifeCycleCost,
  type MaterialQuantity,
  type MoneyTerms,
  type MoneyYear,
  type OneAmount,
  presentValueFactor,
  type Price,
  type PriceList,
  readPriceList,
  type StoreEarnings,
  uniformPresentValueFactor,
  type ValueFactors,
  type VerdictGiven,
  type VerdictReason,
  type VerdictWord,
  type WorkPart,
  type WorthInputs,
  type WorthResult,
  type YearlyAmount,
} from "../../worth/mod.ts";
