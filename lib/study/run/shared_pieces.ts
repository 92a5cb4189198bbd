/** Pieces that many runs have in common, such as the reduced soil of one cut. @module */
import type { ResultCache } from "./cache.ts";

/** Answers held in memory at once; a reduced slice is some megabytes. */
const HELD = 24;

/**
 * Keeps the pieces used last in memory, those in hand too, so that runs side by side do one piece
 * once.
 *
 * @param behind asked for what is not in memory, such as a folder
 * @param held count of answers held
 */
export function sharedPieces(behind: ResultCache, held = HELD): ResultCache {
  const answers = new Map<string, Promise<unknown>>();
  return {
    get<T>(key: string, compute: () => T | Promise<T>): Promise<T> {
      const known = answers.get(key) as Promise<T> | undefined;
      answers.delete(key);
      const answer = known ?? behind.get(key, compute);
      answers.set(key, answer);
      answer.catch(() => answers.delete(key));
      const [oldest] = answers.keys();
      if (answers.size > held) answers.delete(oldest!);
      return answer;
    },
  };
}
