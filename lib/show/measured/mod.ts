/** A house that was built: its log, the model on it, and how well they agree. @module */
export * from "./charts.ts";
export * from "./greenhouse_log.ts";
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
  readGreenhouseLog,
  RECORDED_SCORES,
  replayLog,
  type ScoreRow,
} from "../../measured/mod.ts";
