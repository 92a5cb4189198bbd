/** Draws of a made-up winter that hang on its seed and on what is drawn alone. @module */
import { randomNormal } from "d3-random";
import { uniformFloat64 } from "pure-rand/distribution/uniformFloat64";
import { xoroshiro128plusFromState } from "pure-rand/generator/xoroshiro128plus";

/** Seed and name stirred into 32 bits through the finisher of MurmurHash3 (public domain). */
function stirred(seed: number, name: string, place: number): number {
  let hash = 0x9e3779b9;
  for (const word of [seed, place, ...Array.from(name, (letter) => letter.codePointAt(0)!)]) {
    hash = Math.imul(hash ^ word, 0x85ebca6b);
    hash = Math.imul(hash ^ (hash >>> 13), 0xc2b2ae35);
    hash ^= hash >>> 16;
  }
  return hash | 0;
}

/** Shares from 0 to below 1, even: the same seed and name always give the same ones. */
export function uniformStream(seed: number, name: string): () => number {
  const source = xoroshiro128plusFromState([0, 1, 2, 3].map((k) => stirred(seed, name, k)));
  return () => uniformFloat64(source);
}

/** Standard normal draws: the same seed and name always give the same ones. */
export function normalStream(seed: number, name: string): () => number {
  return randomNormal.source(uniformStream(seed, name))(0, 1);
}
