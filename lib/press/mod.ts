/**
 * The press: runs notebooks on the real Deno kernel and writes them as notebooks and as one HTML
 * report. It knows nothing of heat.
 *
 * @module
 */
export { writeAtomically } from "./files.ts";
export { DEFAULT_CELL_LIMIT } from "./cell_limit.ts";
export {
  type Cell,
  type CodeCell,
  type DisplayOutput,
  type ErrorOutput,
  formatNotebook,
  type MediaBundle,
  type Notebook,
  type Output,
  parseNotebook,
  type ResultOutput,
  type StreamOutput,
  type TextCell,
  withLanguage,
} from "./notebook.ts";
export { blankTexts, countShows } from "./outputs.ts";
export {
  type CellFailure,
  type FailureKind,
  type NotebookRun,
  runNotebook,
  type RunOptions,
} from "./run_notebook.ts";
export { type PageChanges, type PageSection } from "./page.ts";
export { type PackInput, renderPack } from "./pack.ts";
export { findBrowser, PrintFailure, printPdf, type PrintRequest } from "./print_pdf.ts";
export { renderReport, type ReportInput } from "./report.ts";
export {
  type NotebookSection,
  type PageNotice,
  renderWorkbook,
  type WorkbookInput,
} from "./workbook.ts";
