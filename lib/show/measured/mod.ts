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
  checkLog,
  checkLogByBlocks,
  fitLog,
  type GreenhouseLog,
  type HalfScores,
  type HeldOut,
  type LogCheck,
  type LogForm,
  type LogHalves,
  type LogMean,
  type LogMeans,
  type LogParameters,
  type LogPrediction,
  type LogScore,
  type MeasuredResult,
  readGreenhouseLog,
  RECORDED_SCORES,
  replayLog,
  type ScoreRow,
} from "../../measured/mod.ts";
