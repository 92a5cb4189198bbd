/** A house that was built: its logs, the plan beside them, and how well they agree. @module */
export * from "./answer.ts";
export * from "./charts.ts";
export * from "./exercises.ts";
export * from "./greenhouse_log.ts";
export * from "./monitoring.ts";
export * from "./season_charts.ts";
export * from "./sensor_drawings.ts";
export * from "./tables.ts";
export { greenhouseLog } from "../../study/mod.ts";
export {
  type Agreement,
  type Banded,
  type ChannelSummary,
  checkLog,
  checkLogByBlocks,
  type Finding,
  type FindingKind,
  fitLog,
  type GreenhouseLog,
  type HalfScores,
  type HeatSums,
  type HeldOut,
  type HourlyHeat,
  type Lift,
  LOG_FLAGS,
  type LogCheck,
  type LogFlag,
  type LogForm,
  type LoggedBalance,
  type LoggedDay,
  type LoggedFlow,
  type LoggedNight,
  type LoggedSeason,
  type LogHalves,
  type LogMean,
  type LogMeans,
  type LogParameters,
  type LogPrediction,
  type LogScore,
  type MeasuredResult,
  type PlanAgreement,
  type PlanBesideLog,
  type PlannedAndMeasured,
  readGreenhouseLog,
  RECORDED_SCORES,
  replayLog,
  type ScoreRow,
  type TestedDifference,
} from "../../measured/mod.ts";
