/** Seeded random series. @module */
import { randomLcg, randomNormal } from "d3-random";

/**
 * Standard normal series with day-to-day (or hour-to-hour) memory:
 * x[i] = φ x[i-1] + √(1 - φ²) ε, an autoregression of first order with variance 1.
 *
 * @param length number of values
 * @param persistence φ, 0 to below 1
 * @param seed any number; the same seed gives the same series
 * @returns the series
 */
export function persistentNormal(length: number, persistence: number, seed: number): Float64Array {
  const draw = randomNormal.source(randomLcg(Math.abs(Math.sin(seed * 12.9898 + 78.233)) % 1))(
    0,
    1,
  );
  for (let warmUp = 0; warmUp < 20; warmUp++) draw();
  const innovation = Math.sqrt(1 - persistence ** 2);
  const series = new Float64Array(length);
  let value = draw();
  for (let index = 0; index < length; index++) {
    series[index] = value;
    value = persistence * value + innovation * draw();
  }
  return series;
}

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
