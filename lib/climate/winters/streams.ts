/** Random draws that hang on their key alone. @module */
import { randomNormal } from "d3-random";
import { uniformFloat64 } from "pure-rand/distribution/uniformFloat64";
import { xoroshiro128plusFromState } from "pure-rand/generator/xoroshiro128plus";

/** What is drawn; each quantity has a stream of its own in every winter. */
const QUANTITIES = ["temperature", "slow", "clearness", "hours", "range", "wind"] as const;

/** A quantity that is drawn. */
export type DrawnQuantity = typeof QUANTITIES[number];

/** Picks a stream: the study's seed, the winter's number and what is drawn. */
export interface StreamKey {
  /** whole number of the study */
  readonly seed: number;
  /** place of the winter, from 0 */
  readonly winter: number;
  /** what is drawn */
  readonly quantity: DrawnQuantity;
}

/**
 * Standard normal draws of one key: the same key gives the same draws whatever else is drawn, and
 * different keys give independent ones.
 *
 * The key is mixed into the 128 bits of a xoroshiro128+ generator (Blackman & Vigna 2021
 * [blackman-vigna-2021]).
 *
 * @param key of the stream
 * @returns draws one after the other
 */
export function normalDraws(key: StreamKey): () => number {
  const words = [key.seed, key.winter, QUANTITIES.indexOf(key.quantity), 0x57494e54];
  const state = Array.from({ length: 4 }, (_, place) => mixed([...words, place]));
  const source = xoroshiro128plusFromState(state);
  return randomNormal.source(() => uniformFloat64(source))(0, 1);
}

/** Words stirred into one of 32 bits, each through the finisher of MurmurHash3 (public domain). */
function mixed(words: readonly number[]): number {
  let hash = 0x9e3779b9;
  for (const word of words) {
    hash = Math.imul(hash ^ word, 0x85ebca6b);
    hash = Math.imul(hash ^ (hash >>> 13), 0xc2b2ae35);
    hash ^= hash >>> 16;
  }
  return hash | 0;
}
