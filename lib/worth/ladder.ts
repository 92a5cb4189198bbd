/** The ladder: the measure that earns most, then the next one on the house so changed, until none pays. @module */
import { alone, each, kilowattHours, type Steps } from "../basics/mod.ts";
import { houseMeasures } from "../house/mod.ts";
import type { HouseInputs } from "../house/types.ts";
import {
  baselineTask,
  orBaseline,
  reducedBaselines,
  reducedStores,
  settledTask,
} from "../store/runs.ts";
import type { StoreRequest } from "../store/site.ts";
import { type Alternative, measureAlternative } from "./alternatives.ts";
import { storeMoney, worthMoney } from "./compute.ts";
import { judgeMoney } from "./earnings.ts";
import type { WorthRequest, YearlyEnergy } from "./request.ts";

/** What the ladder is built from. */
export interface LadderQuestion {
  /** the store in few slices; every year of the ladder is run in as many */
  readonly request: StoreRequest;
  /** what the worth chapter is computed from: prices, terms and the field's quantities */
  readonly worth: WorthRequest;
  /** measures offered on a house; the usual ones where not given */
  readonly offered?: typeof houseMeasures;
}

/** One step; money in the currency of the prices. */
export interface LadderRung extends Pick<Alternative, "name" | "kind" | "change" | "costOfHeat"> {
  /** first cost of this step, money */
  readonly capital: number;
  /** first cost of this step and those before, money */
  readonly capitalSoFar: number;
  /** kWh a year that this step saves on the house with those before */
  readonly saved: number;
  /** kWh a year of heat still needed after it */
  readonly heatNeeded: number;
  /** kWh a year of the fans' electricity after it */
  readonly fanEnergy: number;
  /** present value that this step saves, money; above 0 */
  readonly netSavings: number;
}

/** The plan that is built step by step. */
export interface MeasureLadder {
  /** kWh a year of heat that the house as it is needs */
  readonly heatAsItIs: number;
  /** steps in the order they are built; empty where none pays */
  readonly rungs: readonly LadderRung[];
  /** the house with all its steps */
  readonly house: HouseInputs;
  /** true where the store is one of the steps */
  readonly withStore: boolean;
  /** currency of the prices */
  readonly currency: string;
  /** measures without a price, which cannot be a step */
  readonly unpriced: readonly string[];
}

/** A house, with the store or without. */
interface Built {
  readonly house: HouseInputs;
  readonly withStore: boolean;
}

/** A step that could be next, and the house with it. */
interface Candidate {
  readonly built: Built;
  readonly energy: Used;
  readonly rung: Alternative;
}

/** kWh a year. */
type Used = Pick<YearlyEnergy, "backupHeat" | "fanEnergy">;

/**
 * Climbs: of the measures still open on the house as far as it is built, and the store, the one with
 * the highest net savings is taken, and all are run again with it. Each measure is offered once by
 * its name. It ends where no step has net savings above 0. A fault of the design does not keep the
 * store out; the verdict names it.
 *
 * @param question the store, and money of the study
 * @returns null where heat or electricity has no price
 */
export function* ladderSteps(question: LadderQuestion): Steps<MeasureLadder | null> {
  const { request, worth, offered = houseMeasures } = question;
  if (worthMoney(worth).parts === null) return null;
  let built: Built = { house: request.houseInputs, withStore: false };
  let [used] = yield* energies(request, [built]);
  const heatAsItIs = used!.backupHeat;
  const rungs: LadderRung[] = [];
  const unpriced = new Set<string>();
  for (;;) {
    const measures = offered(built.house).filter(({ name }) =>
      rungs.every((rung) => rung.name !== name)
    );
    const changed = measures.map(({ inputs }): Built => ({ ...built, house: inputs }));
    const next = built.withStore ? changed : [...changed, { ...built, withStore: true }];
    const energy = yield* energies(request, next);
    const candidates = next.map((one, k): Candidate => {
      const rung = k < measures.length
        ? measureRung(measures[k]!, { before: used!, after: energy[k]!, worth })
        : storeRung(used!, energy[k]!, worth);
      return { built: one, energy: energy[k]!, rung };
    });
    for (const { rung } of candidates) if (rung.capital === null) unpriced.add(rung.name);
    const best = bestOf(candidates);
    if (best === null) break;
    const { name, kind, change, saved, capital, costOfHeat, netSavings } = best.rung;
    rungs.push({
      name,
      kind,
      change,
      costOfHeat,
      saved,
      capital: capital!,
      capitalSoFar: (rungs.at(-1)?.capitalSoFar ?? 0) + capital!,
      heatNeeded: best.energy.backupHeat,
      fanEnergy: best.energy.fanEnergy,
      netSavings: netSavings!,
    });
    ({ built, energy: used } = best);
  }
  const currency = worth.inputs.prices!.currency;
  return { heatAsItIs, rungs, ...built, currency, unpriced: [...unpriced] };
}

/** The ladder, all done here. Parameters and result are those of {@link ladderSteps}. */
export function measureLadder(question: LadderQuestion): MeasureLadder | null {
  return alone(ladderSteps(question));
}

/** The highest net savings above 0; the first of equals. */
function bestOf(candidates: readonly Candidate[]): Candidate | null {
  let best: Candidate | null = null;
  for (const one of candidates) {
    if ((one.rung.netSavings ?? 0) > (best?.rung.netSavings ?? 0)) best = one;
  }
  return best;
}

/** The settled years of houses held at the set point, with and without the store. */
function* energies(request: StoreRequest, all: readonly Built[]): Steps<Used[]> {
  const requests = all.map(({ house }) => ({ ...request, houseInputs: house }));
  const bare = yield* reducedBaselines(requests);
  const years = yield* each(baselineTask, bare.map((store) => ({ ...store, heated: true })));
  const dug = yield* reducedStores(requests.filter((_, k) => all[k]!.withStore));
  const settled = yield* each(settledTask, dug.map((store) => ({ ...store, heated: true })));
  let place = 0;
  return years.map((year, k) => {
    const { ledger } = all[k]!.withStore ? orBaseline(settled[place++]!, year) : year;
    return {
      backupHeat: kilowattHours(ledger.heater),
      fanEnergy: kilowattHours(ledger.fanEnergy),
    };
  });
}

/** A measure's step; with the store there, what its fans need less or more counts too. */
function measureRung(
  measure: ReturnType<typeof houseMeasures>[number],
  { before, after, worth }: {
    readonly before: Used;
    readonly after: Used;
    readonly worth: WorthRequest;
  },
): Alternative {
  const { parts } = worthMoney(worth);
  const saved = before.backupHeat - after.backupHeat;
  return measureAlternative(
    {
      name: measure.name,
      change: measure.change,
      saved,
      coldestHourGain: 0,
      work: { id: measure.id, ...measure.work },
      fanEnergySaved: before.fanEnergy - after.fanEnergy,
    },
    before.backupHeat,
    worth.inputs.prices,
    parts,
  );
}

function storeRung(before: Used, after: Used, worth: WorthRequest): Alternative {
  const { costs, parts } = worthMoney(worth);
  const energy = { ...after, backupHeatNoFan: before.backupHeat };
  const money = costs === null || parts === null
    ? null
    : storeMoney({ ...worth, energy }, costs, parts);
  const judged = money === null ? null : judgeMoney(money);
  return {
    name: "heat store",
    kind: "store",
    change: "as planned",
    saved: before.backupHeat - after.backupHeat,
    coldestHourGain: 0,
    capital: judged?.capital ?? null,
    costOfHeat: judged?.costOfHeat ?? null,
    netSavings: judged?.earned.netSavings ?? null,
  };
}
