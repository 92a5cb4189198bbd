/** The daily wave of temperature. @module */
import { MONTH_FIRST_HOURS } from "../../basics/mod.ts";

/** Mean over each month of the day's highest less the day's lowest. */
export function meanDailySwing(temperature: Float64Array): number[] {
  return Array.from({ length: 12 }, (_, month) => {
    let total = 0;
    const [from, to] = [MONTH_FIRST_HOURS[month]!, MONTH_FIRST_HOURS[month + 1]!];
    for (let start = from; start < to; start += 24) {
      let [low, high] = [Infinity, -Infinity];
      for (let hour = start; hour < start + 24; hour++) {
        low = Math.min(low, temperature[hour]!);
        high = Math.max(high, temperature[hour]!);
      }
      total += high - low;
    }
    return total / ((to - from) / 24);
  });
}

/**
 * Departure from the day's mean over the day's swing, at the middle of an hour from 0 to 23; a ratio.
 *
 * Source: Erbs, Klein & Beckman 1983 [erbs-1983].
 */
export function dailyShape(hour: number): number {
  const angle = 2 * Math.PI * (hour + 0.5 - 1) / 24;
  return 0.4632 * Math.cos(angle - 3.805) + 0.0984 * Math.cos(2 * angle - 0.360) +
    0.0168 * Math.cos(3 * angle - 0.822) + 0.0138 * Math.cos(4 * angle - 3.513);
}
