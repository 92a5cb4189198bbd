/** The ladder: the cheapest kilowatt-hour saved, then the next one on the house so changed, until none pays. @module */
import { alone, each, hoursBelow, kilowattHours, type Steps } from "../basics/mod.ts";
import { findCrop, type HouseMeasure, houseMeasures } from "../house/mod.ts";
import type { HouseInputs } from "../house/types.ts";
import { type AsItIs, asItIsYears, likeYears } from "../store/like_houses.ts";
import { orBaseline, reducedStores, settledTask } from "../store/runs.ts";
import type { StoreRequest } from "../store/site.ts";
import { type Alternative, measureAlternative, storeAlternative } from "./alternatives.ts";
import { storeMoney, type WorthMoney, worthMoney } from "./compute.ts";
import { judgeMoney } from "./earnings.ts";
import type {
  LadderQuestion,
  LadderRest,
  LadderRung,
  LadderYear,
  MeasureLadder,
} from "./ladder_types.ts";
import { heatWorth } from "./money/plans.ts";
import { nextStep } from "./next_step.ts";

/** A house, with the store or without. */
interface Built {
  readonly house: HouseInputs;
  readonly withStore: boolean;
}

/** A step that could be next. */
interface Candidate extends Built {
  readonly step: Pick<HouseMeasure, "id" | "work" | "name" | "change"> | "store";
}

/** What a candidate saves and costs; the year is null where it was not worth running. */
interface Judged extends Candidate {
  readonly year: LadderYear | null;
  readonly rung: Alternative;
  readonly costOfHeat: number | null;
}

/** All that stays the same while the ladder is climbed. */
interface Ground {
  readonly question: LadderQuestion;
  readonly money: WorthMoney;
  readonly asItIs: AsItIs;
}

/**
 * Climbs. Of the measures still open on the house as far as it is built, and the store, the step that
 * {@link nextStep} names is taken, and what is left is run again with it; so until none pays. Each
 * measure is offered once by its name. What could not pay even if it saved all that is still needed
 * is not run. A fault of the design does not keep the store out; the verdict names it.
 *
 * @param question the store, and money of the study
 * @returns null where heat or electricity has no price
 */
export function* ladderSteps(question: LadderQuestion): Steps<MeasureLadder | null> {
  const { request, worth } = question;
  const money = worthMoney(worth);
  if (money.parts === null) return null;
  const asItIs = yield* asItIsYears(request);
  const ground = { question, money, asItIs };
  let built: Built = { house: request.houseInputs, withStore: false };
  const start: LadderYear = {
    heat: kilowattHours(asItIs.years.held.ledger.heater),
    fanEnergy: 0,
    hoursBelowCropLimit: cropHours(request, asItIs.years.free.year.airTemperature),
  };
  let before = start;
  const rungs: LadderRung[] = [];
  for (;;) {
    const judged = yield* judgeAll(ground, built, { before, taken: rungs });
    const best = nextStep(judged, heatWorth(money.parts));
    if (best === null) {
      const currency = worth.inputs.prices!.currency;
      const rest = judged.map(restOf);
      return {
        asItIs: start,
        rungs,
        house: built.house,
        withStore: built.withStore,
        currency,
        rest,
      };
    }
    built = { house: best.house, withStore: best.withStore };
    const after = yield* withCropHours(ground, best);
    rungs.push(rungOf(best.rung, after, { before, last: rungs.at(-1) }));
    before = after;
  }
}

/** The ladder, all done here. Parameters and result are those of {@link ladderSteps}. */
export function measureLadder(question: LadderQuestion): MeasureLadder | null {
  return alone(ladderSteps(question));
}

/** Everything that could be next, run and priced, the store first. */
function* judgeAll(
  ground: Ground,
  built: Built,
  { before, taken }: { readonly before: LadderYear; readonly taken: readonly LadderRung[] },
): Steps<Judged[]> {
  const { offered = houseMeasures } = ground.question;
  const measures = offered(built.house)
    .filter(({ name }) => taken.every((rung) => rung.name !== name));
  const candidates: Candidate[] = [
    ...(built.withStore ? [] : [{ ...built, withStore: true, step: "store" as const }]),
    ...measures.map((step): Candidate => ({ ...built, house: step.inputs, step })),
  ];
  const all = { heat: 0, fanEnergy: 0, hoursBelowCropLimit: null };
  const worthRunning = candidates.filter((one) =>
    (priced(one, { before, after: all }, ground).netSavings ?? 0) > 0
  );
  const years = yield* yearsOf(ground, worthRunning);
  return candidates.map((one) => {
    const year = years[worthRunning.indexOf(one)] ?? null;
    const rung = priced(one, { before, after: year ?? before }, ground);
    return { ...one, year, rung, costOfHeat: year === null ? null : rung.costOfHeat };
  });
}

/** Settled years; hours of the crop only where the store is there, whose free year is run anyway. */
function* yearsOf(ground: Ground, all: readonly Built[]): Steps<LadderYear[]> {
  const { question: { request, withStore }, asItIs } = ground;
  const requestOf = ({ house }: Built) => ({ ...request, houseInputs: house });
  const isKnown = (one: Built) => one.withStore && one.house === request.houseInputs;
  const bare = all.filter((one) => !one.withStore);
  const dug = all.filter((one) => one.withStore && !(isKnown(one) && withStore !== undefined));
  const held = yield* likeYears(asItIs, bare.map(requestOf), ["held"]);
  const dugYears = yield* yearsWithStore(ground, dug.map(requestOf));
  return all.map((one) => {
    if (!one.withStore) return bareYear(held[bare.indexOf(one)]!.held!.ledger.heater);
    return dugYears[dug.indexOf(one)] ?? withStore!;
  });
}

function bareYear(heater: number): LadderYear {
  return { heat: kilowattHours(heater), fanEnergy: 0, hoursBelowCropLimit: null };
}

function* yearsWithStore(
  { asItIs }: Ground,
  requests: readonly StoreRequest[],
): Steps<LadderYear[]> {
  const bare = yield* likeYears(asItIs, requests, ["free", "held"]);
  const stores = yield* reducedStores(requests);
  const settled = yield* each(
    settledTask,
    stores.flatMap((store) => [false, true].map((heated) => ({ ...store, heated }))),
  );
  return requests.map((request, k) => {
    const free = orBaseline(settled[2 * k]!, bare[k]!.free!);
    const held = orBaseline(settled[2 * k + 1]!, bare[k]!.held!);
    return {
      heat: kilowattHours(held.ledger.heater),
      fanEnergy: kilowattHours(held.ledger.fanEnergy),
      hoursBelowCropLimit: cropHours(request, free.year.airTemperature),
    };
  });
}

/** The year of a step that is taken, with the hours of the crop. */
function* withCropHours(ground: Ground, { house, year }: Judged): Steps<LadderYear> {
  if (year!.hoursBelowCropLimit !== null) return year!;
  const request = { ...ground.question.request, houseInputs: house };
  const [years] = yield* likeYears(ground.asItIs, [request], ["free"]);
  return { ...year!, hoursBelowCropLimit: cropHours(request, years!.free!.year.airTemperature) };
}

function cropHours({ houseInputs }: StoreRequest, air: Float64Array): number {
  return hoursBelow(air, findCrop(houseInputs.crop).killingLimit);
}

/** What a step costs and earns between two years. */
function priced(
  { step }: Candidate,
  { before, after }: { readonly before: LadderYear; readonly after: LadderYear },
  { question: { worth }, money: { costs, parts } }: Ground,
): Alternative {
  const saved = before.heat - after.heat;
  const unseen = { coldestHourGain: 0, cropHoursAvoided: 0 };
  if (step !== "store") {
    const { id, work, name, change } = step;
    return measureAlternative(
      {
        name,
        change,
        saved,
        ...unseen,
        work: { id, ...work },
        fanEnergySaved: before.fanEnergy - after.fanEnergy,
      },
      before.heat,
      worth.inputs.prices,
      parts,
    );
  }
  const energy = {
    backupHeat: after.heat,
    backupHeatNoFan: before.heat,
    fanEnergy: after.fanEnergy,
  };
  const stored = costs === null || parts === null
    ? null
    : storeMoney({ ...worth, energy }, costs, parts);
  const judged = stored === null ? null : judgeMoney(stored);
  return storeAlternative(
    { saved, ...unseen },
    judged && {
      capital: judged.capital,
      costOfHeat: judged.costOfHeat,
      netSavings: judged.earned.netSavings,
    },
  );
}

function rungOf(
  { name, kind, change, costOfHeat, saved, capital, netSavings }: Alternative,
  after: LadderYear,
  { before, last }: { readonly before: LadderYear; readonly last: LadderRung | undefined },
): LadderRung {
  return {
    name,
    kind,
    change,
    costOfHeat: costOfHeat!,
    capital: capital!,
    capitalSoFar: (last?.capitalSoFar ?? 0) + capital!,
    saved,
    savedSoFar: (last?.savedSoFar ?? 0) + saved,
    netSavings: netSavings!,
    netSavingsSoFar: (last?.netSavingsSoFar ?? 0) + netSavings!,
    cropHoursAvoided: before.hoursBelowCropLimit! - after.hoursBelowCropLimit!,
    after,
  };
}

function restOf({ year, rung }: Judged): LadderRest {
  const { name, kind, change, capital, saved, costOfHeat } = rung;
  const why = capital === null
    ? "no price"
    : year === null
    ? "costs more than all heat still needed"
    : "costs more than it saves";
  return {
    name,
    kind,
    change,
    capital,
    why,
    ...(year === null ? { saved: null, costOfHeat: null } : { saved, costOfHeat }),
  };
}
