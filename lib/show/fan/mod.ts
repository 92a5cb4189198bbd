/** The fan: which one, at what point of its curve, at what power. @module */
export { answer, summaryTable } from "./answer.ts";
export { curveChart } from "./charts.ts";
export { countChart, monthsChart, speedChart, type TriedFan } from "./choice_charts.ts";
export { choiceTable, elevationTable, pointWords } from "./choice_tables.ts";
export { EXERCISES } from "./exercises.ts";
export {
  type ElevationTrial,
  fanChoices,
  fanCounts,
  fanElevations,
  type FanMonth,
  fanMonths,
  type FanSources,
  fanSpeeds,
  type FanTrial,
} from "./fan_variants.ts";
export {
  type AirPath,
  changeFan,
  type FanChange,
  type FanCurve,
  fanEnergy,
  type FanInputs,
  type FanPoint,
  type FanResult,
  FANS,
  fansInParallel,
  fansInSeries,
  type FanSurroundings,
  findFan,
  type OperatingPoint,
  operatingPoint,
  type PointMissed,
  type PointReached,
  type PressurePoint,
  readFans,
  type ShapedCurve,
  speedForFlow,
  type SpeedPoint,
  speedSweep,
  stallLimit,
  systemPressure,
} from "../../fan/mod.ts";
