/** Humidity from monthly normals. @module */
import { saturationPressure, saturationPressureOverWater } from "../../air/mod.ts";
import { dailyMeans, HOURS_PER_YEAR, MONTH_FIRST_HOURS } from "../../basics/mod.ts";

/**
 * Relative humidity whose monthly means are the given ones as far as saturation lets them.
 *
 * @param means 0 to 1, twelve values
 * @param dryBulb degC by hour
 */
export function humidityFromNormals(means: readonly number[], dryBulb: Float64Array): Float64Array {
  const daily = dailyMeans(dryBulb);
  const overWater = dryBulb.map(saturationPressureOverWater);
  const highest = dryBulb.map((temperature, hour) =>
    Math.min(1, saturationPressure(temperature) / overWater[hour]!)
  );
  const dailySaturation = daily.map(saturationPressureOverWater);
  const result = new Float64Array(HOURS_PER_YEAR);
  for (let month = 0; month < 12; month++) {
    let scale = means[month]!;
    const [from, to] = [MONTH_FIRST_HOURS[month]!, MONTH_FIRST_HOURS[month + 1]!];
    for (let round = 0; round < 40; round++) {
      let total = 0;
      for (let hour = from; hour < to; hour++) {
        const vapour = scale * dailySaturation[Math.floor(hour / 24)]!;
        result[hour] = Math.min(highest[hour]!, vapour / overWater[hour]!);
        total += result[hour]!;
      }
      const factor = means[month]! / (total / (to - from));
      if (Math.abs(factor - 1) < 1e-6) break;
      scale *= factor;
    }
  }
  return result;
}
