/** Seeded noise for tests. @module */
import { randomLcg, randomNormal } from "d3-random";

/** Normal numbers of mean 0 and deviation 1, the same for the same seed. */
export function seededNormal(seed: number): () => number {
  const source = randomLcg((seed * 0.6180339887) % 1);
  // the first numbers of neighbouring seeds are alike
  for (let i = 0; i < 8; i++) source();
  return randomNormal.source(source)(0, 1);
}

/** Number of seeds, of `count`, for which a trial says yes. */
export function timesOf(count: number, trial: (normal: () => number) => boolean): number {
  let times = 0;
  for (let seed = 1; seed <= count; seed++) if (trial(seededNormal(seed))) times++;
  return times;
}
