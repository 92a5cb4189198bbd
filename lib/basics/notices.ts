/**
 * Messages a result carries for its reader: plausibility, cautions, defaults taken.
 *
 * @module
 */

/** How much a notice matters. `warning` puts the result in doubt, `caution` is about safety. */
export type NoticeLevel = "info" | "warning" | "caution";

/** Chapters of a study, in the order of the job. */
export type Chapter =
  | "climate"
  | "soil"
  | "house"
  | "tubes"
  | "headers"
  | "fan"
  | "store"
  | "worth"
  | "measured";

/** One message for the reader. */
export interface Notice {
  readonly level: NoticeLevel;
  readonly chapter: Chapter | "study";
  readonly text: string;
}

/** Builds a notice. */
export function notice(level: NoticeLevel, chapter: Notice["chapter"], text: string): Notice {
  return { level, chapter, text };
}
