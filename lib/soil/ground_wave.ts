/** Waves and monthly tables read off the column's undisturbed ground. @module */
import { monthlyMeansOfDays } from "../basics/mod.ts";
import { groundAtDepth } from "./ground.ts";
import type { GroundYear } from "./ground.ts";
import type { AnnualWave } from "./types.ts";
import { dampingDepth, undisturbedTemperature } from "./wave.ts";

/** m: depths the wave is fitted at, clear of the daily weather and of most frost. */
const FIT_DEPTHS = [0.5, 0.75, 1, 1.5, 2, 3, 5];

/**
 * Annual wave that fits the column's ground best between 0.5 and 5 m, least squares with the
 * diffusivity given. Over whole years the three terms of the wave do not mix, so each coefficient
 * is a plain projection.
 *
 * @param ground a year of the column
 * @param diffusivity m²/s
 */
export function fitWaveToGround(ground: GroundYear, diffusivity: number): AnnualWave {
  const days = ground.temperature.length;
  let mean = 0;
  let cosine = 0;
  let sine = 0;
  let weight = 0;
  for (const depth of FIT_DEPTHS) {
    const depths = depth / dampingDepth(diffusivity);
    const series = groundAtDepth(ground, depth);
    const part = Math.exp(-depths);
    weight += part * part / 2;
    series.forEach((value, day) => {
      const angle = (2 * Math.PI * (day + 1)) / days - depths;
      mean += value / days / FIT_DEPTHS.length;
      cosine += (value * part * Math.cos(angle)) / days;
      sine += (value * part * Math.sin(angle)) / days;
    });
  }
  const minimumDay = (Math.atan2(-sine, -cosine) / (2 * Math.PI)) * 365;
  return {
    mean,
    amplitude: Math.hypot(cosine, sine) / weight,
    minimumDay: (minimumDay + 365) % 365,
    diffusivity,
  };
}

/** Root mean square of column minus wave over 0.5 to 5 m and the year, K. */
export function waveMisfit(ground: GroundYear, wave: AnnualWave): number {
  let sum = 0;
  for (const depth of FIT_DEPTHS) {
    groundAtDepth(ground, depth).forEach((value, day) => {
      sum += (value - undisturbedTemperature(wave, depth, day + 1)) ** 2;
    });
  }
  return Math.sqrt(sum / (FIT_DEPTHS.length * ground.temperature.length));
}

/** Monthly means of a wave at one depth, degC. */
export function monthlyWave(wave: AnnualWave, depth: number): number[] {
  return monthlyMeansOfDays(
    Float64Array.from({ length: 365 }, (_, day) => undisturbedTemperature(wave, depth, day + 0.5)),
  );
}
