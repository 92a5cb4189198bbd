/** Many variants of a study: which they are, computed, written as they finish, put together. @module */
export type {
  Axis,
  FigureColumn,
  RowValues,
  Shard,
  SweepForm,
  SweepPlan,
  SweptKey,
  SweptValue,
} from "./types.ts";
export { readSweep } from "./sweep_file.ts";
export { rowValues, samplePoints, shardRows } from "./rows.ts";
export { findShard, type ShardGiven } from "./shard.ts";
export { variantText } from "./variant.ts";
export {
  cellsOf,
  figureColumns,
  type FinishedRow,
  headLine,
  rowLine,
  type TableColumn,
  tableColumns,
} from "./table.ts";
export { type KnownRows, openRows, orderedText, readRows, type RowFile } from "./row_file.ts";
export { doubtText, sampledDoubt, strongestKeys } from "./doubt.ts";
export { type FigureDoubt, halfBand } from "./figure_doubt.ts";
export {
  drawnWinters,
  readWinterValues,
  type WinterValues,
  winterValues,
  winterValuesText,
  withWeather,
} from "./weather_doubt.ts";
export { DOUBT_ROWS, doubtSweepText } from "./doubt_plan.ts";
export { fieldSweepText, type FieldToTry } from "./field_plan.ts";
export { betterThanFirst, type JudgedRow, judgedRows, unbeatenText } from "./unbeaten.ts";
export { parquetOf } from "./parquet.ts";
export {
  findManifest,
  MANIFEST,
  type SweepInputs,
  type SweepManifest,
  writeManifest,
} from "./manifest.ts";
export { runRows, type SweepRun, sweptFigures } from "./run_sweep.ts";
