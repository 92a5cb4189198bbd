/** The study: opened, checked, run, written. @module */
export type { DefaultTaken, Figure, Figures, Study, StudyHeading } from "./types.ts";
export { checkStudyText, defaultStudyPath } from "./check_study.ts";
export { type OpenOptions, openStudy } from "./open.ts";
export { studyJsonSchema } from "./json_schema.ts";
export { type ChapterResults, type RunOptions, startRun, type StudyRun } from "./run.ts";
export { type Provenance, type ResultsFile, resultsOf, writeResults } from "./write_results.ts";
export { hourlyCsv } from "./hourly.ts";
export { dateAfterMidsummer, dateOfHour, timeOfHour } from "./dates.ts";
export { type LibraryVersion, libraryVersion } from "./library_version.ts";
export { loadClimateFile, type LoadedClimate } from "./climate_source.ts";
export { readTextFile } from "./read_text.ts";
export { DESIGN_AIR_TEMPERATURE, meanPressure, middleOfLayers } from "./chapters.ts";
