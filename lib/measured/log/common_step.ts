/** Readings of all loggers on one common step, by means over the step. @module */
import { InputError } from "../../basics/mod.ts";
import type { ScreenedSeries } from "./screen.ts";
import { type Channel, LOG_FLAGS } from "./types.ts";

/** More steps than this are a slip of the step or of a clock. */
const MOST_STEPS = 5_000_000;

/** The common step of a log. */
export interface StepPlan {
  /** s since 1970 UTC, start of the first step, a whole number of steps */
  readonly start: number;
  /** s */
  readonly step: number;
  /** number of steps */
  readonly count: number;
}

/**
 * The common step: as wanted, or the coarsest interval of the loggers.
 *
 * @param series of all loggers
 * @param wanted s; the coarsest interval where undefined
 * @throws {InputError} where it comes to more than five million steps
 */
export function commonStep(
  series: readonly Pick<ScreenedSeries, "interval" | "times">[],
  wanted?: number,
): StepPlan {
  const step = wanted ?? Math.max(...series.map(({ interval }) => interval));
  const first = Math.min(...series.map(({ times }) => times[0]!));
  const last = Math.max(...series.map(({ times, interval }) => times.at(-1)! + interval));
  // steps at either end that no logger covers by half hold no value and are left off
  const start = Math.ceil(first / step - 0.5 - 1e-9) * step;
  const end = Math.floor(last / step + 0.5 + 1e-9) * step;
  const count = Math.max(1, Math.round((end - start) / step));
  if (!(step > 0) || count > MOST_STEPS) {
    throw new InputError(
      `Cannot put the log on steps of ${step} s: it would have ${count}; expected at most ` +
        `${MOST_STEPS}. Take a longer step, or correct the times of the rows`,
    );
  }
  return { start, step, count };
}

/**
 * Channels of one logger on the common step. Each reading stands for its interval; a step has the
 * mean of the parts of readings that lie in it, and a value where they cover at least half of it.
 * Readings with a flag count only where there is no other.
 *
 * @param series of one logger
 * @param plan the common step
 */
export function onCommonStep(series: ScreenedSeries, plan: StepPlan): Channel[] {
  return series.sensors.map((sensor, s) => {
    const sound = new Means(plan);
    const odd = new Means(plan);
    const flags = new Uint8Array(plan.count);
    const values = series.values[s]!;
    const bits = series.flags[s]!;
    for (let i = 0; i < values.length; i++) {
      if (Number.isNaN(values[i]!)) continue;
      (bits[i] === 0 ? sound : odd).add(series.times[i]!, series.interval, values[i]!, (step) => {
        if (bits[i] !== 0) flags[step]! |= bits[i]!;
      });
    }
    const means = Float64Array.from({ length: plan.count }, (_, step) => {
      const mean = sound.mean(step);
      if (!Number.isNaN(mean)) {
        // what is left of the step is sound, unless the whole sensor is in doubt
        flags[step]! &= ~LOG_FLAGS.spike;
        return mean;
      }
      const other = odd.mean(step);
      if (Number.isNaN(other)) flags[step]! |= LOG_FLAGS.gap;
      return other;
    });
    return { sensor, values: means, flags };
  });
}

/** Means over steps of readings that each stand for some time. */
class Means {
  private readonly sums: Float64Array;
  private readonly covered: Float64Array;
  private readonly plan: StepPlan;
  constructor(plan: StepPlan) {
    this.plan = plan;
    this.sums = new Float64Array(plan.count);
    this.covered = new Float64Array(plan.count);
  }
  add(time: number, interval: number, value: number, touched: (step: number) => void): void {
    const { start, step, count } = this.plan;
    const [from, to] = [(time - start) / step, (time + interval - start) / step];
    const last = Math.min(count - 1, Math.ceil(to - 1e-9) - 1);
    for (let at = Math.max(0, Math.floor(from + 1e-9)); at <= last; at++) {
      const part = Math.min(at + 1, to) - Math.max(at, from);
      this.sums[at]! += part * value;
      this.covered[at]! += part;
      touched(at);
    }
  }
  mean(step: number): number {
    return this.covered[step]! >= 0.5 - 1e-9 ? this.sums[step]! / this.covered[step]! : NaN;
  }
}
