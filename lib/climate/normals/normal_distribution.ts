/** The standard normal distribution. @module */

/**
 * Distribution function of the standard normal.
 *
 * Source: Abramowitz & Stegun 1964 [abramowitz-stegun-1964], 26.2.17; error below 7.5e-8.
 *
 * @param value any number
 * @returns 0 to 1
 */
export function normalProbability(value: number): number {
  const t = 1 / (1 + 0.2316419 * Math.abs(value));
  const tail = Math.exp(-value * value / 2) / Math.sqrt(2 * Math.PI) * t *
    (0.319381530 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
  return value > 0 ? 1 - tail : tail;
}
