/** Made-up tubes. */
import { summariseTubes } from "../../../lib/tubes/mod.ts";
import type { TubesResult } from "../../../lib/tubes/types.ts";
import { made } from "../made.ts";

export const tubesResult = summariseTubes(made<TubesResult>({
  product: {},
  count: 20,
  length: 22,
  totalLength: 440,
  diameter: 0.102,
  positions: Array.from(
    { length: 20 },
    (_, tube) => ({ x: tube % 10, depth: tube < 10 ? 0.6 : 0.9 }),
  ),
  airSpeed: 2,
  flowPerTube: 0.0163,
  reynolds: 13600,
  frictionFactor: 0.06,
  pressureDrop: 34,
  lossCoefficient: 14.4,
  filmCoefficient: 10,
  transferUnits: 2.2,
  effectiveness: 1 - Math.exp(-2.2),
  notices: [],
}));
