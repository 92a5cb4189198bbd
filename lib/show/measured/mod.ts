/** A house that was built: its log, the model on it, and how well they agree. @module */
export { logChart } from "./charts.ts";
export { greenhouseLogItems } from "./greenhouse_log.ts";
export { greenhouseLog } from "../../study/mod.ts";
export {
  checkLog,
  checkLogByBlocks,
  fitLog,
  type GreenhouseLog,
  type HalfScores,
  type HeldOut,
  type LogCheck,
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
  scoreRows,
} from "../../measured/mod.ts";
