/** The settled year of a case: what the store chapter computes of it, and no more. @module */
import { min } from "d3-array";
import { alone, dayRanges, hoursBelow, kilowattHours, monthlyHeat } from "../../basics/mod.ts";
import type { ClimateYear } from "../../climate/types.ts";
import { baselineRequest } from "../../store/baseline.ts";
import type { StoreRequest } from "../../store/request.ts";
import { baselineTask, orBaseline, reducedStores, settledTask } from "../../store/runs.ts";
import type { SettledYear } from "../../store/seasons/settled_year.ts";
import type { Changes, LivePart, LiveStudy, LiveYear, Resolution } from "../types.ts";
import { changedSections } from "./changed.ts";
import { completedSections } from "./completed.ts";
import { remembered } from "./remembered.ts";
import { requested } from "./requested.ts";

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
}

type Air = Pick<SettledYear, "ledger" | "year">;

/** The year with the fan always off; it hangs on house, soil and place of the tubes alone. */
const bare = remembered(
  (question: { readonly request: StoreRequest; readonly heated: boolean }): Air => {
    const [store] = alone(reducedStores([question.request]));
    const { ledger, year } = baselineTask.run({ ...store!, heated: question.heated });
    return { ledger, year };
  },
);

function coldestOfDays(series: Float64Array): number[] {
  return dayRanges(series).map(({ low }) => low);
}

/** Runs a case without a pause. Parameters and result are those of {@link liveSteps}. */
export function liveYear(given: LiveCase): LiveYear {
  const steps = liveSteps(given);
  let turn = steps.next();
  while (turn.done !== true) turn = steps.next();
  return turn.value;
}

/**
 * Computes the settled year of a case, with freezing: free-running and held at the set point, with
 * the store and with the fan always off. Figures are those of the store chapter for the same study.
 * The year for the first chart comes first.
 *
 * @param given the case
 * @throws {InputError} where the case makes no sense
 */
export function* liveSteps(given: LiveCase): Generator<LiveStep, LiveYear> {
  const { study, climate, changes, resolution } = given;
  const sections = completedSections(changedSections(study.given, changes), study.ownFans);
  const { request, notices } = requested(sections, climate, resolution);
  const outdoors = coldestOfDays(climate.dryBulb);
  const { airFlow } = request.fan;
  yield { share: 0.1, part: { figures: { airFlow }, days: { outdoors }, months: {} } };

  const [store] = alone(reducedStores([request]));
  yield { share: 0.15, part: { figures: { airFlow }, days: { outdoors }, months: {} } };

  const free = settledTask.run({ ...store!, heated: false });
  const first = {
    airFlow,
    heatIn: kilowattHours(free.ledger.heatIn),
    heatOut: kilowattHours(free.ledger.heatOut),
    fanEnergy: kilowattHours(free.ledger.fanEnergy),
  };
  yield {
    share: 0.45,
    part: {
      figures: first,
      days: { outdoors, store: coldestOfDays(free.year.airTemperature) },
      months: {},
    },
  };

  const without = baselineRequest(request);
  const noFan = bare({ request: without, heated: false });
  const main: Air = orBaseline(free, noFan);
  const days = {
    outdoors,
    store: coldestOfDays(main.year.airTemperature),
    noFan: coldestOfDays(noFan.year.airTemperature),
  };
  const second = {
    ...first,
    coldestHour: min(main.year.airTemperature)!,
    coldestHourNoFan: min(noFan.year.airTemperature)!,
    hoursBelowFreezing: hoursBelow(main.year.airTemperature, 0),
    hoursBelowFreezingNoFan: hoursBelow(noFan.year.airTemperature, 0),
  };
  yield { share: 0.6, part: { figures: second, days, months: {} } };

  const heated = settledTask.run({ ...store!, heated: true });
  yield { share: 0.9, part: { figures: second, days, months: {} } };

  const heatedNoFan = bare({ request: without, heated: true });
  const held: Air = orBaseline(heated, heatedNoFan);
  const backupHeat = kilowattHours(held.ledger.heater);
  const backupHeatNoFan = kilowattHours(heatedNoFan.ledger.heater);
  return {
    figures: { ...second, backupHeat, backupHeatNoFan, savedHeat: backupHeatNoFan - backupHeat },
    days,
    months: {
      store: monthlyHeat(held.year.heater),
      noFan: monthlyHeat(heatedNoFan.year.heater),
    },
    slices: request.inputs.slices,
    notices,
  };
}
