/** Made-up fields of a search; numbers of our own, no check values. @module */
import type { FieldCandidate } from "../../lib/tubes/mod.ts";

/** A field that costs and gives more with its index. */
export const candidate = (index: number): FieldCandidate => ({
  tube: "corrugated-4in",
  count: 10 + index,
  length: 20,
  spacing: 0.4,
  layers: 2,
  depth: 0.6,
  totalLength: 20 * (10 + index),
  airSpeed: 3 - index / 10,
  pressureDrop: 60,
  heat: 20 + 2 * index,
  fanEnergy: 3 - index / 8,
  cost: 1000 + 100 * index,
});

/** Twelve of them in order. */
export const front: readonly FieldCandidate[] = Array.from(
  { length: 12 },
  (_, index) => candidate(index),
);
