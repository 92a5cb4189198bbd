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
  type HouseWay,
  houseWays,
  type PlateAir,
  type PlateCollector,
  plateEfficiency,
  type PlateHoles,
  type PlateTransfer,
  plateTransfer,
  STORE_VARIANTS,
  type StoreRequest,
  type StoreVariant,
  storeVariants,
  type VariantRow,
} from "../../store/mod.ts";
export type * from "../../store/types.ts";
