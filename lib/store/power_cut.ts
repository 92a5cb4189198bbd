/** A power cut in the coldest hours: how long until the house freezes. @module */
import { min } from "d3-array";
import { alone, HOUR, type Steps } from "../basics/mod.ts";
import { findCrop, houseModel, withHeater } from "../house/mod.ts";
import type { HouseModel } from "../house/types.ts";
import { baselineRequest } from "./baseline.ts";
import type { CutStart, CutState, CutStates } from "./cut_states.ts";
import { settledSetting } from "./seasons/settled_year.ts";
import { type SoilModel, soilModel } from "./seasons/soil_model.ts";
import { reducedEngine } from "./solver/reduced/engine.ts";
import { reducedStores } from "./runs.ts";
import { runYear, startState } from "./seasons/year.ts";
import type { StoreRequest } from "./site.ts";

/** h of weather after the cut that are run. */
const HOURS = 4 * 24;
/** s: steps after the cut, in which a light house loses its last kelvins. */
const STEPS = [HOUR / 12] as const;

/** What keeps the house warm after the cut: the ground the store has warmed, the fan too, or neither. */
export type CutWay = "store" | "fan kept running" | "no store";

/** One house after the cut. */
export interface CutCourse {
  /** when the power fails */
  readonly start: CutStart;
  /** hour index at which it fails */
  readonly hour: number;
  /** true: a heater held the set point until then */
  readonly heated: boolean;
  /** what is left to keep it warm */
  readonly way: CutWay;
  /** degC of the house at the cut and at the end of each hour after it */
  readonly air: Float64Array;
  /** h until the house falls below 0 degC; 0 where it already is, null where it does not */
  readonly toFreezing: number | null;
  /** h until it falls below the crop's killing limit, likewise */
  readonly toCropLimit: number | null;
  /** degC, lowest in these days */
  readonly lowest: number;
}

/** Every house, and the weather it is in. */
export interface PowerCut {
  /** h run after the cut */
  readonly hours: number;
  /** name of the crop */
  readonly crop: string;
  /** degC at which it dies */
  readonly cropLimit: number;
  /** by start, houses heated and not, ways */
  readonly courses: readonly CutCourse[];
  /** degC outdoors in the hours after each start */
  readonly outdoors: readonly { readonly start: CutStart; readonly air: Float64Array }[];
}

/** No heater, and vents that stay shut. */
function withoutPower(house: HouseModel): HouseModel {
  const still = withHeater(house, 0);
  return { ...still, inputs: { ...still.inputs, ventCapacity: 0 } };
}

/** First time at which a course falls below a limit, straight between its steps. */
function hoursUntil(
  limit: number,
  first: number,
  steps: readonly { readonly after: number; readonly air: number }[],
): number | null {
  if (first < limit) return 0;
  let before = { after: 0, air: first };
  for (const step of steps) {
    if (step.air < limit) {
      const share = (before.air - limit) / (before.air - step.air);
      return before.after + share * (step.after - before.after);
    }
    before = step;
  }
  return null;
}

interface CutCase {
  readonly request: StoreRequest;
  readonly model: SoilModel;
  readonly house: HouseModel;
  readonly at: CutState;
  /** true: the fan has power of its own */
  readonly fan: boolean;
}

/** The house from the cut on. */
function afterTheCut(given: CutCase, cropLimit: number) {
  const { at, model, house } = given;
  const engine = reducedEngine(model.slice, model.site.lengths.length, STEPS);
  engine.load(at.soil);
  const state = startState(model.site, engine, at.house);
  state.owed = at.owed;
  state.vapourOwed = at.vapourOwed;
  const steps: { after: number; air: number }[] = [];
  let seconds = 0;
  runYear(
    { ...settledSetting({ ...given, house }), from: at.hour, hours: HOURS, shortSteps: true },
    state,
    (report) => {
      seconds += report.seconds;
      steps.push({ after: seconds / HOUR, air: report.house.state.airTemperature });
    },
  );
  const first = at.house.airTemperature;
  const perHour = steps.length / HOURS;
  return {
    air: Float64Array.of(
      first,
      ...steps.filter((_, k) => (k + 1) % perHour === 0).map((s) => s.air),
    ),
    toFreezing: hoursUntil(0, first, steps),
    toCropLimit: hoursUntil(cropLimit, first, steps),
    lowest: Math.min(first, min(steps, ({ air }) => air)!),
  };
}

/**
 * Cuts the power at the coldest hour of the year and at the start of its coldest three days: heater and
 * fan stop, the vents stay shut, the curtain is worked by hand as before, the weather goes on. Each house
 * starts from the year's own state at that hour. "Fan kept running" is the store with a battery for the
 * fan and its control, the heater off.
 *
 * @param request the store's request
 * @param states of house and ground at the cut, as the chapter's result keeps them
 */
export function powerCut(request: StoreRequest, states: CutStates): PowerCut {
  return alone(powerCutSteps(request, states));
}

/** The power cut in pieces. Parameters and result are those of {@link powerCut}. */
export function* powerCutSteps(request: StoreRequest, states: CutStates): Steps<PowerCut> {
  const { dryBulb } = request.climate;
  const crop = findCrop(request.houseInputs.crop);
  const house = withoutPower(houseModel(request.houseInputs, request.climate));
  // the years without a store, whose states these are, run on ground of their own
  const [own, bare] = yield* reducedStores([request, baselineRequest(request)]);
  const [store, ground] = [own!, bare!].map(({ request, slice }) => ({
    request,
    model: soilModel(request, house, slice),
  })) as [Pick<CutCase, "request" | "model">, Pick<CutCase, "request" | "model">];
  const ways = (index: number, heated: boolean) => {
    const warmed = (heated ? states.storeHeated : states.store)[index]!;
    const none = (heated ? states.noStoreHeated : states.noStore)[index]!;
    return [
      { way: "store", at: warmed, fan: false, ...store },
      { way: "fan kept running", at: warmed, fan: true, ...store },
      { way: "no store", at: none, fan: false, ...ground },
    ] as const;
  };
  const courses = states.store.flatMap(({ start, hour }, index) =>
    [true, false].flatMap((heated) =>
      ways(index, heated).map(({ way, ...given }): CutCourse => ({
        start,
        hour,
        heated,
        way,
        ...afterTheCut({ house, ...given }, crop.killingLimit),
      }))
    )
  );
  return {
    hours: HOURS,
    crop: crop.name,
    cropLimit: crop.killingLimit,
    courses,
    outdoors: states.store.map(({ start, hour }) => ({
      start,
      air: Float64Array.from(
        { length: HOURS + 1 },
        (_, k) => dryBulb[(hour + k) % dryBulb.length]!,
      ),
    })),
  };
}
