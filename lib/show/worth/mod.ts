/** What the store costs, what it earns, and whether to dig. @module */
export * from "./answer.ts";
export * from "./charts.ts";
export * from "./exercises.ts";
export * from "./odds_charts.ts";
export * from "./odds_tables.ts";
export * from "./tables.ts";
export {
  type Alternative,
  type Band,
  capitalRecoveryFactor,
  compareCosts,
  type CostPlan,
  type CostRow,
  type Costs,
  type DoubtedInput,
  type DoubtShare,
  type Earnings,
  escalatingPresentValueFactor,
  levelisedCost,
  type LifeCycleCost,
  lifeCycleCost,
  type MaterialQuantity,
  type MoneyDoubt,
  type MoneyTerms,
  type MoneyYear,
  type OneAmount,
  presentValueFactor,
  type Price,
  type PriceList,
  type RankedWinter,
  readPriceList,
  type StoreEarnings,
  uniformPresentValueFactor,
  type ValueFactors,
  type VerdictGiven,
  type VerdictReason,
  type VerdictWord,
  type WinterOdds,
  type WinterSpread,
  type WorkPart,
  type WorthInputs,
  type WorthResult,
  type YearlyAmount,
} from "../../worth/mod.ts";
