/** The long pieces of the store chapter: reductions and settled years, plain data in and out. @module */
import { type AnyTask, each, samePlain, type Steps, type Task } from "../basics/mod.ts";
import { initialHouseState } from "../house/mod.ts";
import { baselineRequest, baselineYear, inOneLane } from "./baseline.ts";
import type { SoilLedger } from "./ledger/ledger.ts";
import { tagFields, type TagLedger } from "./ledger/tags.ts";
import { ownHouse } from "./own_house.ts";
import type { StoreRequest } from "./site.ts";
import type { ReducedSlice } from "./solver/reduced/reduction.ts";
import type { EmptyingSpell, FreezingYear, SoilSection, StoreYear } from "./types.ts";
import { emptyingSpell, SPELL_START } from "./seasons/emptying.ts";
import { cutRecorder } from "./seasons/cut_state.ts";
import { freezingRecorder } from "./seasons/freezing.ts";
import { emptyStoreYear, yearRecorder } from "./seasons/recorder.ts";
import { sectionCamera } from "./seasons/section.ts";
import {
  JUMPS_FROM_AFAR,
  settledSetting,
  type SettledYear,
  settledYear,
  settlingOf,
} from "./seasons/settled_year.ts";
import {
  freshEngine,
  ownSite,
  reducedSlice,
  type SliceQuestion,
  sliceQuestion,
  soilModel,
} from "./seasons/soil_model.ts";
import { type SoilField, soilField, stateFromField } from "./seasons/soil_field.ts";
import { periodicYear } from "./seasons/spin_up.ts";
import { runYear, startState } from "./seasons/year.ts";

/** A study's store with its soil reduced. */
export interface ReducedStore {
  /** inputs and the results of the earlier chapters */
  readonly request: StoreRequest;
  /** its soil across the tubes */
  readonly slice: ReducedSlice;
}

/** Which year without a store. */
export interface BaselineQuestion extends ReducedStore {
  /** true: a heater without limit holds the set point; false: the house runs free */
  readonly heated: boolean;
  /** settled soil of a like house to settle from; undisturbed ground unless given */
  readonly from?: SoilField;
}

/** A year that repeats without a store, and the soil at its end, to settle others from. */
export interface BaselineAnswer extends SettledYear {
  readonly field: SoilField;
}

/** Which settled year of a store with its fan. */
export interface SettledQuestion extends ReducedStore {
  /** true: a heater without limit holds the set point; false: the house runs free */
  readonly heated: boolean;
  /** soil to settle from, in one year with a jump; undisturbed ground unless given */
  readonly from?: SoilField;
  /** true where the soil at the end is wanted, to settle others from */
  readonly keepField?: boolean;
}

/** Which years after building. */
export interface FirstYearsQuestion extends ReducedStore {
  /** soil to begin with; undisturbed ground unless given */
  readonly from?: SoilField;
  /** how many; as many as the study asks for, one at least, unless given */
  readonly years?: number;
}

/** A settled year with its soil where that was wanted. */
export interface SettledAnswer extends SettledYear {
  readonly field: SoilField | null;
}

/** The free-running year that repeats, with everything recorded. */
export interface MainYear {
  readonly ledger: SoilLedger;
  readonly tags: TagLedger;
  /** whether the fan ran in any of the years */
  readonly fanRan: boolean;
  readonly year: StoreYear;
  readonly freezing: FreezingYear | null;
  /** degC, lowest temperature around the tubes */
  readonly coldestSoil: number;
  readonly sections: SoilSection;
  readonly cutStates: SettledYear["cutStates"];
  readonly emptying: EmptyingSpell;
}

function mainYear({ request, slice }: ReducedStore): MainYear {
  const house = ownHouse(request, false);
  const model = soilModel(request, house, slice);
  const engine = freshEngine(model);
  const year = emptyStoreYear();
  const record = yearRecorder(year, house);
  const camera = sectionCamera(model.site, engine);
  const freezing = freezingRecorder(model.site, engine);
  const state = startState(model.site, engine, initialHouseState(house));
  const cut = cutRecorder(request.climate.dryBulb, state);
  let spellState: Float64Array | undefined;
  let coldestSoil = Infinity;
  const watch = () => {
    for (let lane = 0; lane < model.site.slices; lane++) {
      coldestSoil = Math.min(coldestSoil, engine.storeTemperature[lane]!);
    }
  };
  const given = { request, model, house, fan: true };
  const { ledger, tags, fanRan } = periodicYear({
    setting: settledSetting(given),
    state,
    engine,
    settling: settlingOf(given),
    jumps: JUMPS_FROM_AFAR,
    tags: tagFields(model.slice, model.site),
    listen: (report) => {
      record(report);
      camera.listen(report);
      freezing.listen(report);
      cut.listen(report);
      if (report.hour === SPELL_START) spellState ??= engine.save();
      watch();
    },
  });
  return {
    ledger,
    tags: tags!,
    fanRan,
    year,
    freezing: freezing.result(year.storeTemperature, request.soil.properties.latentHeat),
    coldestSoil,
    sections: camera.section(),
    cutStates: cut.kept(),
    emptying: emptyingSpell(request, model, spellState!),
  };
}

/** Ledgers of the years after building as they come. */
function firstYears({ request, slice, from, years: wanted }: FirstYearsQuestion): SoilLedger[] {
  const house = ownHouse(request, false);
  const model = soilModel(request, house, slice);
  const engine = freshEngine(model);
  if (from !== undefined) engine.load(stateFromField(model, from));
  const state = startState(model.site, engine, initialHouseState(house));
  const setting = settledSetting({ request, model, house, fan: true });
  const years = wanted ?? Math.max(1, request.inputs.spinUpYears);
  return Array.from({ length: years }, () => runYear(setting, state));
}

function settled(question: SettledQuestion): SettledAnswer {
  const { request, slice, heated, from, keepField } = question;
  const house = ownHouse(request, heated);
  const model = soilModel(request, house, slice);
  const start = from === undefined ? {} : { start: stateFromField(model, from) };
  const year = settledYear({
    request,
    model,
    house,
    fan: true,
    ...start,
    keepCells: keepField === true,
  });
  return { ...year, cells: [], field: keepField === true ? soilField(model, year.cells) : null };
}

/** Reduces a slice. */
export const reduceTask: Task<SliceQuestion, ReducedSlice> = {
  name: "store.reduce",
  kept: true,
  run: reducedSlice,
};

/** The year that repeats, everything recorded, and the cold spell in it. */
export const mainYearTask: Task<ReducedStore, MainYear> = { name: "store.year", run: mainYear };

/** The years after building. */
export const firstYearsTask: Task<FirstYearsQuestion, SoilLedger[]> = {
  name: "store.firstYears",
  run: firstYears,
};

/** A year that repeats without a store; its question comes from {@link reducedBaselines}. */
export const baselineTask: Task<BaselineQuestion, BaselineAnswer> = {
  name: "store.baseline",
  kept: true,
  run: ({ request, slice, heated, from }) => {
    const house = ownHouse(request, heated);
    const model = soilModel(request, house, slice);
    const year = baselineYear(request, model, house, from);
    return { ...year, cells: [], field: soilField(inOneLane(model), year.cells) };
  },
};

/** A year that repeats with the fan, for comparisons. */
export const settledTask: Task<SettledQuestion, SettledAnswer> = {
  name: "store.settled",
  run: settled,
};

/** A fan that never ran is no store: the year without one then stands for it. */
export function orBaseline<Year extends { readonly fanRan: boolean }, Bare>(
  year: Year,
  bare: Bare,
): Year | Bare {
  return year.fanRan ? year : bare;
}

/** All of them. */
export const STORE_TASKS: readonly AnyTask[] = [
  reduceTask,
  mainYearTask,
  firstYearsTask,
  settledTask,
  baselineTask,
];

/** Several studies with their soils reduced, like soils once. */
export function* reducedStores(requests: readonly StoreRequest[]): Steps<ReducedStore[]> {
  const different: SliceQuestion[] = [];
  const places = requests.map((request) => {
    const question = sliceQuestion(ownSite(request));
    const found = different.findIndex((other) => samePlain(other, question));
    return found < 0 ? different.push(question) - 1 : found;
  });
  const slices = yield* each(reduceTask, different);
  return requests.map((request, k) => ({ request, slice: slices[places[k]!]! }));
}

/** Several studies as the years without a store see them, with their soils reduced. */
export function reducedBaselines(requests: readonly StoreRequest[]): Steps<ReducedStore[]> {
  return reducedStores(requests.map(baselineRequest));
}
