/** Words of a choice as people write them. @module */

/**
 * The word of a list that a text means: capitals, spaces and hyphens do not matter.
 *
 * @returns the word as the list spells it, or undefined
 * @example
 * ```ts
 * import { assertEquals } from "@std/assert";
 * import { matchWord } from "./words.ts";
 *
 * assertEquals(matchWord("z", ["Z", "U"]), "Z");
 * assertEquals(matchWord("Lean to", ["gable", "lean-to"]), "lean-to");
 * assertEquals(matchWord("dome", ["gable", "lean-to"]), undefined);
 * ```
 *
 * @param text what the user wrote
 * @param words known ones, all different without capitals, spaces and hyphens
 */
export function matchWord<const T extends string>(
  text: unknown,
  words: readonly T[],
): T | undefined {
  if (typeof text !== "string") return undefined;
  const plain = (word: string) => word.trim().toLowerCase().replaceAll(/[\s_-]+/g, "");
  return words.find((word) => plain(word) === plain(text));
}
