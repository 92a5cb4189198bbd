/** The whole study: its answer, what to do first, its inputs and figures, its files. @module */
export * from "./answer.ts";
export * from "./first_steps_chart.ts";
export * from "./first_steps_words.ts";
export { figureTexts } from "./figures_table.ts";
export { type InputRow, inputRows } from "./inputs.ts";
export {
  type AllResults,
  type ChapterResults,
  defaultStudyPath,
  type DefaultTaken,
  type ExtraResults,
  type Figure,
  type Figures,
  type FileNaming,
  type GivenFile,
  type LibraryVersion,
  loadClimateFile,
  type LoadedClimate,
  type NamedWeather,
  type OpenOptions,
  type PartOfRun,
  type Provenance,
  type ResultCache,
  type ResultGetters,
  type ResultsFile,
  resultsOf,
  type RunOptions,
  type Study,
  type StudyFrame,
  type StudyHeading,
  type StudyInputs,
  type StudyRun,
  type WorkPool,
  writeResults,
} from "../../study/mod.ts";
export type { Piece, Task } from "../../basics/mod.ts";
export { type FirstStep, firstSteps, type FirstStepsQuestion } from "../../store/mod.ts";
