/** How far a store's figures move when its computation is made finer. @module */
import { max, min, sum } from "d3-array";
import { alone, each, kilowattHours, ratio, type Steps } from "../basics/mod.ts";
import { type Refinement, REFINEMENTS } from "./fineness.ts";
import { baselineTask, orBaseline, reducedBaselines, reducedStores, settledTask } from "./runs.ts";
import type { StoreRequest } from "./request.ts";
import { ownSite } from "./seasons/soil_model.ts";
import { YEAR_STEPS } from "./step_report.ts";

/** What is compared of a settled year. */
export interface ResolvedFigures {
  /** kWh a year into the tube walls, house running free */
  readonly heatIn: number;
  /** kWh a year out of them */
  readonly heatOut: number;
  /** kWh a year of back-up heat that the store saves at the set point */
  readonly savedHeat: number;
  /** degC, coldest hour of the free-running house with the store */
  readonly coldestHour: number;
  /** degC, the same with the fan always off */
  readonly coldestHourNoFan: number;
}

/** A heat among them. */
export type ResolvedHeat = "heatIn" | "heatOut" | "savedHeat";
/** The heats among them, whose movements compare as shares. */
export const RESOLVED_HEATS: readonly ResolvedHeat[] = ["heatIn", "heatOut", "savedHeat"];

/** How large the computation is. */
export interface ComputedSize {
  /** number of soil cells of a slice */
  readonly cells: number;
  /** number of slices with tubes */
  readonly slices: number;
  /** s, the longest step while the fan runs */
  readonly longestStep: number;
}

/** The year with one thing made finer. */
export interface ResolutionRow extends ComputedSize {
  /** what is finer, such as "cells" */
  readonly name: string;
  /** what was done, in words */
  readonly change: string;
  /** its figures */
  readonly figures: ResolvedFigures;
  /** its figures less those of the study: kWh a year and K */
  readonly moved: ResolvedFigures;
  /** the movements of its heats as shares of the study's own; null where there is no such heat */
  readonly shares: Readonly<Record<ResolvedHeat, number | null>>;
}

/** What the settings of the computation leave open. */
export interface StoreResolution {
  /** the study's own figures */
  readonly plan: ResolvedFigures;
  /** how large its computation is */
  readonly planSize: ComputedSize;
  /** one thing finer at a time */
  readonly rows: readonly ResolutionRow[];
  /** the largest movement of each figure by any one of them, without its sign: kWh a year and K */
  readonly largest: ResolvedFigures;
  /** all movements of each figure one upon the other, as if all went the same way: kWh a year and K */
  readonly together: ResolvedFigures;
}

/** The figures, in the order in which they are shown. */
export const RESOLVED: readonly (keyof ResolvedFigures)[] = [
  "heatIn",
  "heatOut",
  "savedHeat",
  "coldestHour",
  "coldestHourNoFan",
];

const figuresBy = (value: (key: keyof ResolvedFigures) => number): ResolvedFigures =>
  Object.fromEntries(RESOLVED.map((key) => [key, value(key)])) as unknown as ResolvedFigures;

/**
 * Runs the settled years again with cells, steps, slices and soil around twice as fine or large, one at
 * a time: what moves then is not known better than that.
 *
 * @param request the store's request, as the study has it
 * @param plan the study's own figures
 * @param refinements what is made finer; cells, steps, slices and soil unless given
 * @throws {InputError} where tubes, house and mesh do not fit together
 */
export function storeResolution(
  request: StoreRequest,
  plan: ResolvedFigures,
  refinements: readonly Refinement[] = REFINEMENTS,
): StoreResolution {
  return alone(resolutionSteps(request, plan, refinements));
}

/** The same in pieces: no year waits for another once the soils are reduced. */
export function* resolutionSteps(
  request: StoreRequest,
  plan: ResolvedFigures,
  refinements: readonly Refinement[] = REFINEMENTS,
): Steps<StoreResolution> {
  const requests = refinements.map(({ refine }) => refine(request));
  const stores = yield* reducedStores(requests);
  const bare = yield* reducedBaselines(requests);
  const pair = [false, true];
  const settled = yield* each(
    settledTask,
    stores.flatMap((store) => pair.map((heated) => ({ ...store, heated }))),
  );
  const baselines = yield* each(
    baselineTask,
    bare.flatMap((store) => pair.map((heated) => ({ ...store, heated }))),
  );
  const rows = refinements.map(({ name, change }, k): ResolutionRow => {
    const [noFan, noFanHeated] = [baselines[2 * k]!, baselines[2 * k + 1]!];
    const free = orBaseline(settled[2 * k]!, noFan);
    const heated = orBaseline(settled[2 * k + 1]!, noFanHeated);
    const figures: ResolvedFigures = {
      heatIn: kilowattHours(free.ledger.heatIn),
      heatOut: kilowattHours(free.ledger.heatOut),
      savedHeat: kilowattHours(noFanHeated.ledger.heater) - kilowattHours(heated.ledger.heater),
      coldestHour: min(free.year.airTemperature)!,
      coldestHourNoFan: min(noFan.year.airTemperature)!,
    };
    const moved = figuresBy((key) => figures[key] - plan[key]);
    return {
      name,
      change,
      figures,
      moved,
      shares: {
        heatIn: ratio(moved.heatIn, plan.heatIn),
        heatOut: ratio(moved.heatOut, plan.heatOut),
        savedHeat: ratio(moved.savedHeat, plan.savedHeat),
      },
      ...sizeOf(requests[k]!),
    };
  });
  const sizes = (key: keyof ResolvedFigures) => rows.map(({ moved }) => Math.abs(moved[key]));
  return {
    plan,
    planSize: sizeOf(request),
    rows,
    largest: figuresBy((key) => max(sizes(key))!),
    together: figuresBy((key) => sum(sizes(key))),
  };
}

function sizeOf(request: StoreRequest): ComputedSize {
  return {
    cells: ownSite(request).operator.capacity.length,
    slices: request.inputs.slices,
    longestStep: (request.fineness?.steps ?? YEAR_STEPS)[0]!,
  };
}
