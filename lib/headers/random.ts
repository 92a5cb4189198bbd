/**
 * Repeatable random numbers.
 *
 * @module
 */

/**
 * A source of evenly spread numbers from 0 to below 1 that gives the same row for the same seed.
 *
 * Source: the mulberry32 generator (public domain, T. Ettinger); good enough for scatter studies.
 *
 * @param seed whole number
 * @returns the source
 */
export function randomSource(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}
