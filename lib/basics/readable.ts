/** Text of files and names, made fit to stand in a message. @module */

/**
 * Signs that move the cursor, colour or reverse what follows, or cannot be seen: controls but tab and line
 * feed, soft hyphens, marks of direction and width, line and paragraph separators, byte-order marks.
 */
// deno-lint-ignore no-control-regex -- those are the signs sought
const UNSEEN = /[\0-\x08\v-\x1f\x7f-\x9f\xad\u061c\u200b-\u200f\u2028-\u202e\u2060-\u206f\ufeff]/g;

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

/** Longest message of one fault, characters. */
const LONGEST = 2000;
/** Characters kept at its end, where it says what to do. */
const KEPT_END = 400;

/** A message cut in its middle where a file put more into it than anybody reads. */
export function shortened(message: string): string {
  if (message.length <= LONGEST) return message;
  return `${message.slice(0, LONGEST - KEPT_END)} … ${message.slice(-KEPT_END)}`;
}
