/** The wave of one period in a series, with its uncertainty. @module */
import { fitLinear } from "./linear_fit.ts";

/** A wave and how surely it is known. */
export interface Wave {
  /** same unit as the series */
  readonly amplitude: number;
  /** rad by which its top lies after the time 0 of the record, 0 to 2π */
  readonly lag: number;
  /** standard uncertainty of the amplitude, same unit */
  readonly amplitudeUncertainty: number;
  /** standard uncertainty of the lag, rad */
  readonly lagUncertainty: number;
  /** mean of the series, same unit */
  readonly mean: number;
}

/**
 * Fits mean + trend + a·cos ωt + b·sin ωt. A trend is only fitted where the record is longer than
 * one and a half periods: in a shorter one it passes for the wave.
 *
 * @param seconds times, s
 * @param values at those times; gaps are left out
 * @param period s
 */
export function waveOf(
  seconds: ArrayLike<number>,
  values: ArrayLike<number>,
  period: number,
): Wave {
  const kept = Array.from(values, (one, i) => [seconds[i]!, one] as const)
    .filter(([time, one]) => Number.isFinite(time + one));
  const times = kept.map(([time]) => time);
  const span = times.length > 0 ? times.at(-1)! - times[0]! : 0;
  const angle = (time: number) => 2 * Math.PI * time / period;
  const columns = [
    times.map(() => 1),
    times.map((time) => Math.cos(angle(time))),
    times.map((time) => Math.sin(angle(time))),
    ...span > 1.5 * period ? [times.map((time) => (time - times[0]!) / span - 0.5)] : [],
  ];
  const fit = fitLinear(columns, kept.map(([, one]) => one));
  const [mean, a, b] = fit.parameters as [number, number, number];
  const amplitude = Math.hypot(a, b);
  const [ua, ub] = [fit.standardDeviations[1]!, fit.standardDeviations[2]!];
  const both = fit.correlation[1]![2]! * ua * ub;
  const across = (x: number, y: number) =>
    Math.sqrt(Math.max(0, (x * ua) ** 2 + (y * ub) ** 2 + 2 * x * y * both)) / amplitude;
  return {
    mean,
    amplitude,
    lag: (Math.atan2(b, a) + 2 * Math.PI) % (2 * Math.PI),
    amplitudeUncertainty: across(a, b),
    lagUncertainty: across(-b, a) / amplitude,
  };
}
