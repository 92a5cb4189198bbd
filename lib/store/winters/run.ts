/** A house with a store and without through many winters. @module */
import { min } from "d3-array";
import {
  each,
  FIRST_OF_JULY,
  HOUR,
  HOURS_PER_YEAR,
  kilowattHours,
  piece,
  type Steps,
  type Task,
  together,
} from "../../basics/mod.ts";
import { makeWinter, measuredWinter, plainWeather, winterClimate } from "../../climate/mod.ts";
import type { ClimateYear } from "../../climate/types.ts";
import { cropYear, findCrop, houseModel, withHeater } from "../../house/mod.ts";
import type { HouseModel } from "../../house/types.ts";
import { baselineRequest } from "../baseline.ts";
import { heaterPeaks } from "../heater_peaks.ts";
import { orBaseline, type ReducedStore, reducedStores } from "../runs.ts";
import { settledSetting } from "../seasons/settled_year.ts";
import { freshEngine, type SoilModel } from "../seasons/soil_model.ts";
import { runYear } from "../seasons/year.ts";
import type { StoreRequest } from "../site.ts";
import { firstOfJuly, stateOf, wayModel } from "./start.ts";
import type {
  FirstOfJuly,
  HouseWinter,
  PairedWinter,
  StartQuestion,
  WinterSet,
  WintersQuestion,
  WinterWay,
} from "./types.ts";

/** Winters of a piece: what they share is worked out seldom, and workers end at about one time. */
const WINTERS_OF_A_PIECE = 5;

/** A way with its engine, which all winters use in turn. */
interface OpenWay {
  readonly way: WinterWay;
  readonly fan: boolean;
  readonly model: SoilModel;
  readonly engine: ReturnType<typeof freshEngine>;
}

function openWay(way: WinterWay, house: HouseModel, fan: boolean): OpenWay {
  const model = wayModel(way.store, house, fan);
  return { way, fan, model, engine: freshEngine(model) };
}

/** What one run is asked for: air without a heater, the heater where the house is held. */
interface WinterRun {
  readonly series: Float64Array;
  readonly fanEnergy: number;
  readonly heater: number;
}

function runWinter(
  { way, fan, model, engine }: OpenWay,
  start: FirstOfJuly,
  house: HouseModel,
  climate: ClimateYear,
  heated: boolean,
): WinterRun {
  engine.load(start.soil);
  const request = { ...way.store.request, climate };
  const series = new Float64Array(HOURS_PER_YEAR);
  const ledger = runYear(
    { ...settledSetting({ request, model, house, fan }), from: FIRST_OF_JULY },
    stateOf(start, engine),
    ({ hour, seconds, house: step }) => {
      const value = heated ? step.flows.heater : step.mean.airTemperature;
      series[hour]! += value * seconds / HOUR;
    },
  );
  return {
    series,
    fanEnergy: kilowattHours(ledger.fanEnergy),
    heater: kilowattHours(ledger.heater),
  };
}

/** House free and held through one winter. */
function houseWinter(open: OpenWay, house: HouseModel, climate: ClimateYear) {
  const { way } = open;
  const free = runWinter(open, way.free, withHeater(house, 0), climate, false);
  const held = runWinter(open, way.held, withHeater(house, Infinity), climate, true);
  const ran = (start: FirstOfJuly, run: WinterRun) => start.fanRan || run.fanEnergy > 0;
  const { crop } = way.store.request.houseInputs;
  return {
    free: {
      fanRan: ran(way.free, free),
      coldestHour: min(free.series)!,
      crop: cropYear(free.series, findCrop(crop)),
    },
    held: {
      fanRan: ran(way.held, held),
      backupHeat: held.heater,
      fanEnergy: held.fanEnergy,
      heaterPeak: heaterPeaks(held.series).hour,
    },
  };
}

function plain({ free, held }: ReturnType<typeof houseWinter>): HouseWinter {
  const { fanRan: _free, ...air } = free;
  const { fanRan: _held, ...heat } = held;
  return { ...air, ...heat };
}

/** The weather of a winter by its place among all. */
function weatherOf(set: WinterSet, from: number): (winter: number) => ClimateYear {
  if ("years" in set) return (winter) => measuredWinter(set.years, winter - from);
  const shared = winterClimate(set.normals, set.place);
  return (winter) => makeWinter(shared, { seed: set.seed, winter });
}

/** The set as far as some of its winters need it. */
function partOf(set: WinterSet, from: number, count: number): WinterSet {
  return "years" in set ? { years: set.years.slice(from, from + count + 1) } : set;
}

function winters({ set, from, count, withStore, without }: WintersQuestion): PairedWinter[] {
  const weather = weatherOf(set, from);
  const { houseInputs } = withStore.store.request;
  let open: readonly [OpenWay, OpenWay] | undefined;
  return Array.from({ length: count }, (_, place) => {
    const winter = from + place;
    const climate = plainWeather(weather(winter));
    const house = houseModel(houseInputs, climate);
    open ??= [openWay(withStore, house, true), openWay(without, house, false)];
    const bare = houseWinter(open[1], house, climate);
    const own = houseWinter(open[0], house, climate);
    return {
      winter,
      coldestOutdoors: min(climate.dryBulb)!,
      withStore: plain({
        free: orBaseline(own.free, bare.free),
        held: orBaseline(own.held, bare.held),
      }),
      without: plain(bare),
    };
  });
}

/** House and ground on 1 July of the mean climate. */
export const firstOfJulyTask: Task<StartQuestion, FirstOfJuly> = {
  name: "store.firstOfJuly",
  run: firstOfJuly,
};

/** Some winters. */
export const wintersTask: Task<WintersQuestion, PairedWinter[]> = {
  name: "store.winters",
  kept: true,
  run: winters,
};

/**
 * Runs a house through many winters with the store and without, free and held at its set point. Each
 * starts on 1 July from ground that is settled under the study's own year; none waits for another.
 *
 * @param request the store's request; its weather stands for the mean climate
 * @param set winters to make, or measured years
 * @param count number of winters
 */
export function* winterSteps(
  request: StoreRequest,
  set: WinterSet,
  count: number,
): Steps<readonly PairedWinter[]> {
  const [store, bare] = yield* reducedStores([request, baselineRequest(request)]);
  const start = (reduced: ReducedStore, fan: boolean, heated: boolean) =>
    piece(firstOfJulyTask, { ...reduced, fan, heated });
  const [free, held, bareFree, bareHeld] = yield* together(
    start(store!, true, false),
    start(store!, true, true),
    start(bare!, false, false),
    start(bare!, false, true),
  );
  const withStore = { store: store!, free, held };
  const without = { store: bare!, free: bareFree, held: bareHeld };
  const pieces = Array.from({ length: Math.ceil(count / WINTERS_OF_A_PIECE) }, (_, place) => {
    const from = place * WINTERS_OF_A_PIECE;
    const some = Math.min(WINTERS_OF_A_PIECE, count - from);
    return { set: partOf(set, from, some), from, count: some, withStore, without };
  });
  return (yield* each(wintersTask, pieces)).flat();
}
