/** A house that was built: its log, the model on it, and how well they agree. @module */
export { logChart } from "./charts.ts";
export {
  greenhouseLog,
  greenhouseLogItems,
  RECORDED_SCORES,
  type ScoreRow,
  scoreRows,
} from "./greenhouse_log.ts";
export {
  checkLog,
  checkLogByBlocks,
  fitLog,
  type GreenhouseLog,
  type HeldOut,
  type LogCheck,
  type LogHalves,
  type LogParameters,
  type LogPrediction,
  type LogScore,
  readGreenhouseLog,
  replayLog,
} from "../../measured/mod.ts";
