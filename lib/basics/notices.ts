/**
 * Messages a result carries for its reader: plausibility, cautions, defaults taken.
 *
 * @module
 */

/** How much a notice matters. `warning` puts the result in doubt, `caution` is about safety. */
export type NoticeLevel = "info" | "warning" | "caution";

/** Chapters of a study, in the order of the job. */
export type ChapterName =
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
  /** how much it matters */
  readonly level: NoticeLevel;
  /** chapter it belongs to */
  readonly chapter: ChapterName | "study";
  /** what the reader is told */
  readonly text: string;
}

/** Builds a notice. */
export function notice(level: NoticeLevel, chapter: Notice["chapter"], text: string): Notice {
  return { level, chapter, text };
}
