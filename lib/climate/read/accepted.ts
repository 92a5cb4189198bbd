/** Words of a columns file that accept weather which is refused otherwise. @module */

/** Each names what the weather is like all year. */
export const ACCEPTED_WORDS: readonly AcceptedWord[] = [
  "no wind",
  "one value",
  "negative nights",
  "no sun",
];

/** One of these words. */
export type AcceptedWord = "no wind" | "one value" | "negative nights" | "no sun";
