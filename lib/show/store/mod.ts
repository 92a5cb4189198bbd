/** The store: tubes, soil and house together over days, seasons and years. @module */
export {
  answer,
  earlyYearTable,
  emptyingTable,
  freezingTable,
  quartersTable,
  seasonTable,
  summaryTable,
  withWithoutTable,
} from "./answer.ts";
export { durationChart, temperatureCarpet, weekChart, yearChart } from "./charts.ts";
export { dailyHeatChart, stateOfChargeChart } from "./days_charts.ts";
export { EXERCISES } from "./exercises.ts";
export { heatFlowChart } from "./flow_chart.ts";
export { soilSectionChart, soilWeeksChart } from "./ground_charts.ts";
export { cumulativeHeatChart, monthlyHeatChart, quartersChart } from "./heat_charts.ts";
export {
  controlTable,
  heaterTable,
  quartersWords,
  recoveryTable,
  variantsTable,
  waysTable,
  waysWords,
} from "./tables.ts";
export { variantsChart, waysChart } from "./ways_charts.ts";
export {
  chargeByQuarter,
  type ComparedVariant,
  type Condensate,
  condensateOfYear,
  type DailyTemperatures,
  fanByMonth,
  fanHoursPerDay,
  type FanMonth,
  type FanYear,
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
  type PlateAir,
  type PlateCollector,
  plateEfficiency,
  type PlateHoles,
  type PlateTransfer,
  plateTransfer,
  type QuarterCharge,
  recoveryByDay,
  type ReturnedPart,
  type RunningTotals,
  runningTotals,
  type SeasonRecovery,
  STORE_VARIANTS,
  type StoreDay,
  type StoreRequest,
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
