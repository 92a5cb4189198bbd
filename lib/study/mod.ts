/** The study: opened, checked, run, written. @module */
export type { DefaultTaken, Figure, Figures, Study, StudyFrame, StudyHeading } from "./types.ts";
export { checkStudyText, defaultStudyPath } from "./file/check_study.ts";
export type { FileNaming, GivenFile } from "./file/given_file.ts";
export { type OpenOptions, openStudy, openStudyText } from "./file/open.ts";
export type {
  AllResults,
  AnyChapter,
  ChapterResults,
  ExtraResults,
  StudyInputs,
} from "./chapters.ts";
export { CHAPTERS, COMPUTATIONS, extrasWithFigures } from "./chapters.ts";
export type { ResultCache } from "./run/cache.ts";
export { type PoolOptions, type WorkPool, workPool } from "./run/pool.ts";
export {
  type PartOfRun,
  type ResultGetters,
  type RunOptions,
  startRun,
  type StudyRun,
} from "./run/run.ts";
export {
  type Provenance,
  type ResultsFile,
  resultsOf,
  writeResults,
} from "./results/write_results.ts";
export { inputHashes, INPUTS, keptAt, writeInputs } from "./results/inputs.ts";
export { momentOfRun } from "./results/moment.ts";
export { hourlyCsv } from "./results/hourly.ts";
export { resultTables, tableCsv, writeTables } from "./results/tables.ts";
export { dateAfterMidsummer, timeOfHour } from "../climate/dates.ts";
export { type LibraryVersion, libraryVersion } from "./run/library_version.ts";
export { loadClimateFile, type LoadedClimate, type NamedWeather } from "./file/climate_source.ts";
export { greenhouseLog, LOG_VARIABLE } from "./file/greenhouse_log.ts";
export { readTextFile } from "./file/read_text.ts";
export { meanPressure } from "../climate/mod.ts";
export {
  type DoubtPart,
  type ReviewCheck,
  type ReviewedResults,
  type ReviewedStudy,
  reviewStudy,
  type SavedHeatDoubt,
  type StudyReview,
} from "./review/review.ts";
export { readResults } from "./compare/results_file.ts";
export {
  type ChangedFigure,
  type ChangedValue,
  compareResults,
  type Differences,
} from "./compare/differences.ts";
export {
  type ComparedHours,
  compareHours,
  COUNTED_LIMITS,
  type HouseHours,
  readHours,
} from "./compare/hours.ts";
export {
  type DrivenChapter,
  type DrivenEnd,
  type Driver,
  DRIVER_STEP,
  type FigureDrivers,
  figureDrivers,
} from "./trial/drivers.ts";
export { type Trial, trialOf } from "./trial/trial.ts";
export { type Changes, trialRun } from "./trial/trial_run.ts";
export type { SweptValue } from "./sweep/types.ts";
