/** Words in tables that spreadsheets open. @module */
import { inert } from "./readable.ts";

/** What a spreadsheet would compute; a number is none. */
const FORMULA = /^[=+\-@\t\r](?!\d*\.?\d*$)/;

/**
 * A cell of words, behind an apostrophe where a spreadsheet would take it for a formula, without signs
 * that a terminal obeys.
 *
 * @example
 * ```ts
 * import { assertEquals } from "@std/assert";
 * import { wordsCell } from "./formula.ts";
 *
 * assertEquals(wordsCell("=1+1"), "'=1+1");
 * assertEquals(["-3.5", "barn fan", ""].map(wordsCell), ["-3.5", "barn fan", ""]);
 * ```
 */
export function wordsCell(text: string): string {
  const words = inert(text);
  return FORMULA.test(words) ? `'${words}` : words;
}
