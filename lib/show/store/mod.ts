/** The store: tubes, soil and house together over days, seasons and years. @module */
export * from "./answer.ts";
export * from "./charts.ts";
export * from "./days_charts.ts";
export * from "./exercises.ts";
export * from "./flow_chart.ts";
export * from "./ground_charts.ts";
export * from "./heat_charts.ts";
export * from "./measures_charts.ts";
export * from "./power_cut.ts";
export * from "./resolution.ts";
export * from "./tables.ts";
export * from "./ways_charts.ts";
export {
  chargeByQuarter,
  type ComparedVariant,
  type ComputedSize,
  type Condensate,
  condensateOfYear,
  type CutCourse,
  type CutStart,
  type CutState,
  type CutStates,
  type CutWay,
  type DailyTemperatures,
  fanByMonth,
  fanHoursPerDay,
  type FanMonth,
  type FanYear,
  type Fineness,
  type FirstQuarter,
  type FirstYear,
  firstYears,
  heatByDay,
  heatByMonth,
  type HeatDay,
  type HeaterPeaks,
  heaterPeaks,
  type HeatMonth,
  type HoursBelow,
  type HouseWay,
  houseWays,
  type KnownYear,
  type KnownYears,
  type MeshSettings,
  type PlateAir,
  type PlateCollector,
  plateEfficiency,
  type PlateHoles,
  type PlateTransfer,
  plateTransfer,
  type PowerCut,
  powerCut,
  type QuarterCharge,
  type RankedKnown,
  type RankedMeasure,
  type RankedYear,
  rankMeasures,
  recoveryByDay,
  type Refinement,
  REFINEMENTS,
  type ResolutionRow,
  type ResolvedFigures,
  type ResolvedHeat,
  type ReturnedPart,
  type RunningTotals,
  runningTotals,
  type SeasonRecovery,
  STORE_VARIANTS,
  type StoreDay,
  type StoreRequest,
  type StoreResolution,
  storeResolution,
  type StoreSummary,
  type StoreVariant,
  storeVariants,
  type StoreWeek,
  storeWeek,
  type SummarisedStore,
  type VariantRow,
  yearFlows,
} from "../../store/mod.ts";
export type * from "../../store/types.ts";
