/** Texts of logs, as a study hands them to the chapter. @module */

/** A file with its text. */
export interface LogText {
  /** name, as the study file gives it */
  readonly name: string;
  /** what stands in it */
  readonly text: string;
}
