/** What the store costs, what it earns, and whether to dig. @module */
export * from "./answer.ts";
export * from "./charts.ts";
export * from "./exercises.ts";
export * from "./ladder_charts.ts";
export * from "./odds_charts.ts";
export { oddsLine } from "./odds_line.ts";
export * from "./odds_tables.ts";
export * from "./other_ways.ts";
export * from "./tables.ts";
export {
  type Alternative,
  type Band,
  type Banded,
  capitalRecoveryFactor,
  compareCosts,
  type CostPlan,
  type CostRow,
  type Costs,
  type CropLoss,
  type DoubtedInput,
  type DoubtShare,
  type Earnings,
  escalatingPresentValueFactor,
  type FuelWay,
  type HouseWinter,
  type LadderRest,
  type LadderRung,
  type LadderYear,
  levelisedCost,
  type LifeCycleCost,
  lifeCycleCost,
  type LimitChance,
  type LimitOdds,
  type MaterialQuantity,
  type MeasureLadder,
  type MoneyDoubt,
  type MoneyTerms,
  type MoneyYear,
  type OneAmount,
  type OtherWays,
  type PairedDifference,
  type PairedWinter,
  presentValueFactor,
  type Price,
  type PriceList,
  type RankedWinter,
  readPriceList,
  type SpreadPair,
  type SpreadSource,
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
