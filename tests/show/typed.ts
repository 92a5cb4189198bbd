/** How answers as people type them are listed, chapter by chapter, beside the samples. */

/** What people type: accepted, and wrong with the slip whose hint fits, or a part of what they are told. */
export interface Typed {
  readonly right: readonly (string | number)[];
  readonly wrong: readonly (readonly [answer: string | number, hint: RegExp | number])[];
}

/** The message for a missing or wrong unit. */
export const UNIT = /expected/;
/** The message for a wrong sign. */
export const SIGN = /sign/;
