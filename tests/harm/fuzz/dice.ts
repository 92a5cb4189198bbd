/** Random choices that a seed repeats. @module */
import { uniformInt } from "pure-rand/distribution/uniformInt";
import { xoroshiro128plus } from "pure-rand/generator/xoroshiro128plus";

/** A source of choices. */
export interface Dice {
  /** whole number from low to high, both included */
  whole(low: number, high: number): number;
  /** one of a list */
  pick<T>(list: readonly T[]): T;
  /** true in so many cases of a hundred */
  percent(share: number): boolean;
}

/** The choices of a seed, a whole number. */
export function diceOf(seed: number): Dice {
  const generator = xoroshiro128plus(seed);
  const whole = (low: number, high: number) => uniformInt(generator, low, Math.max(low, high));
  return {
    whole,
    pick: (list) => list[whole(0, list.length - 1)]!,
    percent: (share) => whole(1, 100) <= share,
  };
}
