/** The fan: which one, at what point of its curve, at what power. @module */
export * from "./answer.ts";
export * from "./charts.ts";
export * from "./choice_charts.ts";
export * from "./choice_tables.ts";
export * from "./exercises.ts";
export * from "./solar.ts";
export {
  type AirPath,
  changeFan,
  curvePoints,
  type ElevationTrial,
  type FanChange,
  fanChoices,
  fanCounts,
  type FanCurve,
  fanElevations,
  fanEnergy,
  type FanInputs,
  type FanPoint,
  type FanResult,
  FANS,
  fansInParallel,
  fansInSeries,
  fanSpeeds,
  type FanSummary,
  type FanSurroundings,
  type FanTrial,
  type FanVariants,
  findFan,
  type HigherField,
  type OperatingPoint,
  operatingPoint,
  pointAgainst,
  type PointMissed,
  type PointReached,
  type PressurePoint,
  readFans,
  type ShapedCurve,
  speedForFlow,
  type SpeedPoint,
  speedSweep,
  type SpeedTrial,
  stallLimit,
  type SummarisedFan,
  systemPressure,
} from "../../fan/mod.ts";
export {
  fanByMonth,
  fanHoursPerDay,
  type FanMonth,
  type FanYear,
  type SolarFan,
  solarFan,
  type SolarFanGiven,
  type SolarMonth,
  type SolarPanel,
} from "../../store/mod.ts";
