/** Text of files and names, made fit to stand in a message. @module */

/**
 * Signs that move the cursor, colour or reverse what follows, or cannot be seen: controls but tab and line
 * feed, soft hyphens, marks of direction and width, line and paragraph separators, byte-order marks,
 * halves of signs.
 */
const UNSEEN =
  // deno-lint-ignore no-control-regex -- those are the signs sought
  /[\0-\x08\v-\x1f\x7f-\x9f\xad\u061c\u200b-\u200f\u2028-\u202e\u2060-\u206f\ufeff]|\p{Surrogate}/gu;

/**
 * Text with every sign that a terminal obeys or nobody sees written as its code, such as `\u001b`.
 * Line feeds and everything else stay.
 *
 * @example
 * ```ts
 * import { assertEquals } from "@std/assert";
 * import { readable } from "./readable.ts";
 *
 * assertEquals(readable("bed\u001b[2J 3"), "bed\\u001b[2J 3");
 * assertEquals(readable("Åbo, 3 m²\n"), "Åbo, 3 m²\n");
 * ```
 */
export function readable(text: string): string {
  return text.replace(UNSEEN, (sign) => `\\u${sign.charCodeAt(0).toString(16).padStart(4, "0")}`);
}

/**
 * Signs that no text of a user needs and that do harm where it is shown: controls but tab and line ends,
 * which a terminal obeys and a picture may not hold; marks that turn the direction of reading; halves
 * of signs.
 */
const HARMFUL =
  // deno-lint-ignore no-control-regex -- those are the signs sought
  /[\0-\x08\v\f\x0e-\x1f\x7f-\x9f\u202a-\u202e\u2066-\u2069\ufffe\uffff]|\p{Surrogate}/gu;

/** What stands in the place of a sign that is left out. */
const LEFT_OUT = "\ufffd";

/**
 * Text with a replacement sign for everything that a terminal obeys, that turns the direction of
 * reading or that is no sign at all, for pages, pictures and tables.
 *
 * @example
 * ```ts
 * import { assertEquals } from "@std/assert";
 * import { inert } from "./readable.ts";
 *
 * assertEquals(inert("bed\u001b[2J\n3 m²"), "bed\ufffd[2J\n3 m²");
 * ```
 */
export function inert(text: string): string {
  return text.replace(HARMFUL, LEFT_OUT);
}

/** Longest message of one fault, characters. */
const LONGEST = 2000;
/** Characters kept at its end, where it says what to do. */
const KEPT_END = 400;

/** A message cut in its middle where a file put more into it than anybody reads. */
export function shortened(message: string): string {
  if (message.length <= LONGEST) return message;
  return `${message.slice(0, LONGEST - KEPT_END)} … ${message.slice(-KEPT_END)}`;
}
