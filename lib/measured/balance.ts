/** What became of the heat that the air left in the soil. @module */
import { kilowattHours } from "../basics/mod.ts";
import { type Banded, banded, type HeatSums } from "./flows/sums.ts";
import { HEAT_READINGS } from "./flows/readings.ts";
import type { LoggedSeason } from "./logged_season.ts";
import type { LoggedBalance } from "./types.ts";
import { propagate } from "./uncertainty/propagate.ts";

/** The soil that counts as the store: from the floor to half a spacing below the lowest tubes. */
export interface StoreBody {
  /** m³ */
  readonly volume: number;
  /** J/(m³ K) */
  readonly heatCapacity: number;
}

/**
 * K: how far a few probes may be from the mean of the whole store, standard uncertainty of the change
 * between two days; common practice, no source.
 */
export const PROBES_STAND_FOR = 0.5;
const NORMAL_95 = 1.959963985;
const COUNT = HEAT_READINGS.length;

/** Heat in less heat out, with what the sensors share taken into account. */
function leftIn({ heat, covariance, sums }: LoggedSeason): Banded {
  const slopes = new Array<number>(COUNT).fill(0);
  heat.running.forEach((_, hour) => {
    for (let k = 0; k < COUNT; k++) {
      const at = hour * COUNT + k;
      slopes[k]! += kilowattHours(3600 * (heat.slopes.heatIn[at]! - heat.slopes.heatOut[at]!));
    }
  });
  const left = sums.heatIn.value - sums.heatOut.value;
  return banded(
    propagate(
      { values: slopes.map(() => 0), covariance },
      (errors) => [slopes.reduce((sum, slope, k) => sum + slope * errors[k]!, left)],
    ),
    0,
  );
}

/** Days at either end whose mean is the store's temperature there. */
const END_DAYS = 3;

function endMeans(days: readonly { readonly store: number | null }[]) {
  const there = days.flatMap(({ store }) => store ?? []);
  if (there.length < 2 * END_DAYS) return null;
  const mean = (values: readonly number[]) =>
    values.reduce((sum, value) => sum + value, 0) / values.length;
  return [mean(there.slice(0, END_DAYS)), mean(there.slice(-END_DAYS))] as const;
}

/** Balance of the store over the logged time; hours without readings are missing on both sides. */
export function loggedBalance(season: LoggedSeason, body: StoreBody): LoggedBalance {
  const left = leftIn(season);
  const ends = endMeans(season.days);
  if (ends === null) return { left, gained: null, rest: null };
  const capacity = kilowattHours(body.volume * body.heatCapacity);
  const value = capacity * (ends[1] - ends[0]);
  const half = NORMAL_95 * capacity * PROBES_STAND_FOR;
  const restHalf = Math.hypot(half, left.high - left.value);
  const rest = left.value - value;
  return {
    left,
    gained: { value, low: value - half, high: value + half },
    rest: { value: rest, low: rest - restHalf, high: rest + restHalf },
  };
}

/** Share of the hours of a log that its sums hold, 0 to 1. */
export function loggedShare(
  season: { readonly heat: LoggedSeason["heat"]; readonly sums: HeatSums },
): number {
  return season.sums.hours / Math.max(1, season.heat.running.length);
}
