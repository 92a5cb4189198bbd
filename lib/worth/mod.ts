/** What the store costs, what it earns, and whether to dig. @module */
export type { MoneyYear, StoreEarnings, WorthInputs, WorthResult } from "./types.ts";
export type { WorthGiven } from "./fields.ts";
export type { Alternative, PricedMeasure } from "./alternatives.ts";
export type { Band, DoubtedInput, DoubtShare, MoneyDoubt } from "./doubt/types.ts";
export { worth } from "./chapter.ts";
export type { WorthRequest, YearlyEnergy } from "./request.ts";
export { type SampledEffects, sampledEffects } from "./doubt/sampled_effects.ts";
export type { SensitivityIndex } from "./doubt/indices.ts";
export { latinHypercube } from "./doubt/sampling.ts";
export { SOBOL_COLUMNS, sobolPoints } from "./doubt/sobol.ts";
export type {
  LadderQuestion,
  LadderRest,
  LadderRung,
  LadderYear,
  MeasureLadder,
} from "./ladder_types.ts";
export type { FuelWay, OtherWays, OtherWaysQuestion } from "./other_ways.ts";
export type { StoreWay } from "./store_ways.ts";
export { nextStep, pays, type PossibleStep } from "./next_step.ts";
export { worthChapter } from "./compute.ts";
export type { DesignFacts } from "./design_faults.ts";
export { designFaults } from "./design_faults.ts";
export type {
  RivalMeasure,
  VerdictFacts,
  VerdictGiven,
  VerdictReason,
  VerdictWord,
} from "./verdict.ts";
export { giveVerdict } from "./verdict.ts";
export {
  capitalRecoveryFactor,
  escalatingPresentValueFactor,
  presentValueFactor,
  uniformPresentValueFactor,
} from "./money/factors.ts";
export type {
  CostPlan,
  LifeCycleCost,
  MoneyTerms,
  OneAmount,
  ValueFactors,
  YearlyAmount,
} from "./money/life_cycle.ts";
export { lifeCycleCost, replacementYears, valueFactors } from "./money/life_cycle.ts";
export type { Earnings } from "./money/comparison.ts";
export { compareCosts, levelisedCost, yearlyGains } from "./money/comparison.ts";
export type { EnergyPrice, PlanParts, StoreSpending } from "./money/plans.ts";
export { heatOnly, storePlan } from "./money/plans.ts";
export type { CostRow, Costs } from "./prices/costs.ts";
export { priceQuantities } from "./prices/costs.ts";
export type { Fuel } from "./prices/fuels.ts";
export { findFuel, FUELS } from "./prices/fuels.ts";
export type { Price, PriceList } from "./prices/price_list.ts";
export { headerPrices } from "./prices/header_prices.ts";
export { findPrice, readPriceList } from "./prices/price_list.ts";
export type { CoilCuts } from "./quantities/coils.ts";
export { coilCuts, cutCoils } from "./quantities/coils.ts";
export type { CoilPiece, CutCoil } from "./quantities/coils.ts";
export type { TakeOffStudy } from "./take_off_inputs.ts";
export { takeOffInputs } from "./take_off_inputs.ts";
export { quantitiesCsv, quantityTakeOff } from "./quantities/take_off.ts";
export type { MaterialQuantity, TakeOffInputs, WorkPart } from "./quantities/types.ts";
export type {
  CropLoss,
  LimitChance,
  LimitOdds,
  RankedWinter,
  SpreadPair,
  SpreadSource,
  WinterOdds,
  WinterSpread,
} from "./odds/types.ts";
export { type OddsFacts, winterOdds } from "./odds/winter_odds.ts";
export type { Banded, PairedDifference } from "./odds/statistics.ts";
export type { HouseWinter, PairedWinter } from "../store/mod.ts";
export type {
  DesignChoice,
  DesignMoney,
  DesignQuestion,
  DesignRow,
  DesignSearch,
  DesignYear,
  OwnGivesUp,
} from "./designs/types.ts";
export { type SievedDesign, sievedFront, sieveSteps, spreadOver } from "./designs/sieve.ts";
