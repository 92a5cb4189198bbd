/** The settled year of a case: what the store chapter computes of it, and no more. @module */
import { min } from "d3-array";
import { dayRanges, hoursBelow, kilowattHours, monthlyHeat } from "../../basics/mod.ts";
import type { ClimateYear } from "../../climate/types.ts";
import {
  type Changes,
  LIVE_HALVES,
  type LiveHalf,
  type LivePart,
  type LiveResult,
  type LiveStudy,
  type LiveYear,
  type Resolution,
} from "../types.ts";
import type { StoreRequest } from "../../store/request.ts";
import { together, UNKNOWN } from "../parts.ts";
import { changedSections } from "./changed.ts";
import { completedSections } from "./completed.ts";
import { remembered } from "./remembered.ts";
import { type Requested, requested } from "./requested.ts";
import { reducedStore, type SettledYears, settledYears } from "./settled.ts";

/** A case of a study. */
export interface LiveCase {
  readonly study: LiveStudy;
  readonly climate: ClimateYear;
  /** values moved away from the study */
  readonly changes: Changes;
  readonly resolution: Resolution;
}

/** A moment between two pieces of the work, at which it may be given up. */
export interface LiveStep {
  /** share of the work that is done, 0 to 1 */
  readonly share: number;
  /** what is known so far */
  readonly part: LivePart;
  /** store whose soil is reduced in the next piece; null before any other */
  readonly reducesNext: StoreRequest | null;
}

const asked = remembered(({ study, climate, changes, resolution }: LiveCase): Requested => {
  const sections = completedSections(changedSections(study.given, changes), study.ownFans);
  return requested(sections, climate, resolution);
});

/**
 * Years that a case settles from: those of the study itself where a quick year of a changed study is
 * wanted, so that it does not hang on what was tried before.
 */
function startOf(given: LiveCase): SettledYears | null {
  const moved = Object.keys(given.changes).length > 0;
  if (given.resolution === "full" || !moved) return null;
  return settledYears(asked({ ...given, changes: {} }).request, null);
}

function coldestOfDays(series: Float64Array): number[] {
  return dayRanges(series).map(({ low }) => low);
}

/**
 * Computes the free-running years of a case, with freezing, with the store and with the fan always off.
 * The year for the first chart comes first.
 *
 * @param given the case
 * @throws {InputError} where the case makes no sense
 */
function* freeYears(given: LiveCase): Generator<LiveStep, LivePart> {
  const { request } = asked(given);
  const outdoors = coldestOfDays(given.climate.dryBulb);
  const { airFlow } = request.fan;
  const nothing = { figures: { airFlow }, days: { outdoors }, months: {} };
  yield { share: 0.05, part: nothing, reducesNext: request };

  reducedStore(request);
  const from = startOf(given);
  from?.asRun(false);
  yield { share: 0.2, part: nothing, reducesNext: null };

  const years = settledYears(request, from);
  const { ledger, year } = years.asRun(false);
  const first = {
    airFlow,
    heatIn: kilowattHours(ledger.heatIn),
    heatOut: kilowattHours(ledger.heatOut),
    fanEnergy: kilowattHours(ledger.fanEnergy),
  };
  yield {
    share: 0.7,
    part: {
      figures: first,
      days: { outdoors, store: coldestOfDays(year.airTemperature) },
      months: {},
    },
    reducesNext: null,
  };

  const [air, airNoFan] = [years.store(false), years.noFan(false)]
    .map((one) => one.year.airTemperature) as [Float64Array, Float64Array];
  return {
    figures: {
      ...first,
      coldestHour: min(air)!,
      coldestHourNoFan: min(airNoFan)!,
      hoursBelowFreezing: hoursBelow(air, 0),
      hoursBelowFreezingNoFan: hoursBelow(airNoFan, 0),
    },
    days: { outdoors, store: coldestOfDays(air), noFan: coldestOfDays(airNoFan) },
    months: {},
  };
}

/**
 * Computes the years of a case held at the set point, with freezing, with the store and with the fan
 * always off. Parameters and errors are those of {@link freeYears}.
 */
function* heldYears(given: LiveCase): Generator<LiveStep, LivePart> {
  const { request } = asked(given);
  yield { share: 0.05, part: UNKNOWN, reducesNext: request };

  reducedStore(request);
  const from = startOf(given);
  from?.asRun(true);
  yield { share: 0.2, part: UNKNOWN, reducesNext: null };

  const years = settledYears(request, from);
  years.asRun(true);
  yield { share: 0.7, part: UNKNOWN, reducesNext: null };

  const [held, heldNoFan] = [years.store(true), years.noFan(true)];
  const backupHeat = kilowattHours(held.ledger.heater);
  const backupHeatNoFan = kilowattHours(heldNoFan.ledger.heater);
  return {
    figures: { backupHeat, backupHeatNoFan, savedHeat: backupHeatNoFan - backupHeat },
    days: {},
    months: {
      store: monthlyHeat(held.year.heater),
      noFan: monthlyHeat(heldNoFan.year.heater),
    },
  };
}

const OF_HALF: Readonly<Record<LiveHalf, typeof freeYears>> = { free: freeYears, held: heldYears };

/**
 * Computes halves of the settled year of a case, one after the other. Neither hangs on the other, so
 * that they may be computed side by side.
 *
 * At full resolution the figures are those of the store chapter for the same study. A quick year
 * is that of comparisons: on few slices, a changed study settled from the study's own soil.
 *
 * @param given the case
 * @param halves of the year
 * @throws {InputError} where the case makes no sense
 */
export function* halfSteps(
  given: LiveCase,
  halves: readonly LiveHalf[],
): Generator<LiveStep, LiveResult> {
  let known = UNKNOWN;
  for (const [place, half] of halves.entries()) {
    const steps = OF_HALF[half](given);
    let turn = steps.next();
    for (; turn.done !== true; turn = steps.next()) {
      const { share, part, reducesNext } = turn.value;
      yield {
        share: (place + share) / halves.length,
        part: together([known, part]),
        reducesNext,
      };
    }
    known = together([known, turn.value]);
    if (place < halves.length - 1) {
      yield { share: (place + 1) / halves.length, part: known, reducesNext: null };
    }
  }
  const { request: { inputs: { slices } }, notices } = asked(given);
  return { ...known, slices, notices };
}

/** Computes both halves of a case. Parameters and errors are those of {@link halfSteps}. */
export function* liveSteps(given: LiveCase): Generator<LiveStep, LiveYear> {
  return (yield* halfSteps(given, LIVE_HALVES)) as LiveYear;
}

/** Runs a case without a pause. Parameters and result are those of {@link liveSteps}. */
export function liveYear(given: LiveCase): LiveYear {
  const steps = liveSteps(given);
  let turn = steps.next();
  while (turn.done !== true) turn = steps.next();
  return turn.value;
}
