/** Other designs of the store, searched on the settled year. @module */
import { alone, each, hoursBelow, kilowattHours, type Steps } from "../../basics/mod.ts";
import { findCrop } from "../../house/mod.ts";
import { reducedStores, settledTask } from "../../store/runs.ts";
import type { StoreRequest } from "../../store/site.ts";
import { worthMoney } from "../compute.ts";
import { ALL_KEYS, choiceKey, designAxes, neighbours, ownChoice } from "./choices.ts";
import { type BuiltDesign, judgeDesign } from "./judge.ts";
import { sieveTask } from "./sieve.ts";
import type { DesignChoice, DesignQuestion, DesignRow, DesignSearch, DesignYear } from "./types.ts";
import { unbeaten } from "./unbeaten.ts";

/** How much a kWh counts over its money in the climbs of the sieve, the greatest net savings first. */
const HEAT_COUNTS = [1, 2, 4, 10];
/** Rounds of the year: the sieve's designs, then what lies beside the unbeaten ones, twice. */
const SHARES = [0.4, 0.7, 1];

/** Heat and hours of a year, not yet compared with anything. */
export interface DesignRun {
  /** kWh a year of back-up heat */
  readonly heat: number;
  /** h a year below the crop's limit in the free house */
  readonly hours: number;
  /** kWh a year of the fans */
  readonly fanEnergy: number;
}

/** Years of several designs, in their order. */
export type DesignYears = (designs: readonly BuiltDesign[]) => Steps<DesignRun[]>;

/** The settled years on the coarse mesh, free and held. */
export function* settledDesigns(designs: readonly BuiltDesign[]): Steps<DesignRun[]> {
  const stores = yield* reducedStores(designs.map(({ request }) => request));
  const years = yield* each(
    settledTask,
    stores.flatMap((store) => [false, true].map((heated) => ({ ...store, heated }))),
  );
  return designs.map(({ request }, k) => {
    const [free, held] = [years[2 * k]!, years[2 * k + 1]!];
    return {
      heat: kilowattHours(held.ledger.heater),
      hours: cropHours(request, free.year.airTemperature),
      fanEnergy: kilowattHours(free.ledger.fanEnergy),
    };
  });
}

function cropHours({ houseInputs }: StoreRequest, air: Float64Array): number {
  return hoursBelow(air, findCrop(houseInputs.crop).killingLimit);
}

/** A design with its year, set on the study's own. */
interface Ran {
  readonly design: BuiltDesign;
  readonly run: DesignRun;
}

/**
 * Searches. The quick estimate climbs to designs worth a year; those, and then the neighbours of the
 * ones that no other beats, go through the settled year on the coarse mesh. Values are the own
 * design's of the study moved by the difference between coarse years, so that the own row has the
 * study's own figures.
 *
 * @param question the study
 * @param years the year of each design; the settled year unless given
 * @returns null where it was not asked for, or heat, electricity or the own design has no price
 */
export function* designSteps(
  question: DesignQuestion,
  years: DesignYears = settledDesigns,
): Steps<DesignSearch | null> {
  const { wanted, worth } = question;
  if (!wanted || worth.inputs.prices === null || worthMoney(worth).parts === null) return null;
  const own = judgeDesign(ownChoice(question), question);
  if (typeof own === "string" || own.money(own.estimate) === null) return null;
  const climbs = yield* each(
    sieveTask,
    HEAT_COUNTS.map((heatCounts) => ({ question, heatCounts })),
  );
  const refused = new Map(climbs.flatMap((climb) => [...climb.refused]));
  const judged = new Set(climbs.flatMap((climb) => climb.judged));
  const ran: Ran[] = [];
  const taken = new Set<string>();
  const most = Math.max(2, worth.inputs.searchRuns);
  const run = function* (designs: readonly BuiltDesign[]): Steps<void> {
    const found = yield* years(designs);
    designs.forEach((design, k) => ran.push({ design, run: found[k]! }));
  };
  const take = (choices: Iterable<DesignChoice>, upTo: number): BuiltDesign[] => {
    const designs: BuiltDesign[] = [];
    for (const choice of choices) {
      if (taken.size >= upTo) break;
      const key = choiceKey(choice);
      if (taken.has(key)) continue;
      const design = judgeDesign(choice, question);
      judged.add(key);
      const why = typeof design === "string" ? design : design.breaks;
      if (why !== null) {
        refused.set(key, why);
        continue;
      }
      taken.add(key);
      designs.push(design as BuiltDesign);
    }
    return designs;
  };
  taken.add(choiceKey(own.choice));
  const [first = most, ...later] = SHARES.map((share) => Math.round(share * most));
  const good = inTurn(climbs.map((climb) => climb.good));
  yield* run([own, ...take(good, first)]);
  const axes = designAxes(question);
  for (const upTo of later) {
    const rows = rowsOf(ran, question);
    const leaders = leadersOf(rows).map(({ choice }) =>
      neighbours(choice, axes, ALL_KEYS.toReversed())
    );
    const more = take(inTurn(leaders), upTo);
    if (more.length > 0) yield* run(more);
  }
  return searchOf(ran, question, { refused, judged: judged.size });
}

/** The search, all done here. Parameters and result are those of {@link designSteps}. */
export function designSearch(question: DesignQuestion): DesignSearch | null {
  return alone(designSteps(question));
}

/** The first of each list, then the second of each, and so on. */
function* inTurn<T>(lists: readonly (readonly T[])[]): Generator<T> {
  const longest = Math.max(0, ...lists.map((list) => list.length));
  for (let place = 0; place < longest; place++) {
    for (const list of lists) if (place < list.length) yield list[place]!;
  }
}

/** The greatest net savings first, then the unbeaten ones. */
function leadersOf(rows: readonly DesignRow[]): readonly DesignRow[] {
  const best = bestOf(rows);
  const unbeaten = rows.filter((row) => row !== best && (row.bestForHeat || row.bestForHours));
  return best === null ? unbeaten : [best, ...unbeaten];
}

function bestOf(rows: readonly DesignRow[]): DesignRow | null {
  return rows.filter(({ breaks }) => breaks === null).reduce<DesignRow | null>(
    (best, row) => best === null || row.netSavings > best.netSavings ? row : best,
    null,
  );
}

/** The own year of the study, moved by what a coarse year differs from the coarse own one. */
function yearOf(run: DesignRun, coarse: DesignRun, { own }: DesignQuestion): DesignYear {
  return {
    saved: own.saved + (coarse.heat - run.heat),
    cropHoursAvoided: own.cropHoursAvoided + (coarse.hours - run.hours),
    fanEnergy: Math.max(0, own.fanEnergy + (run.fanEnergy - coarse.fanEnergy)),
  };
}

function rowsOf(ran: readonly Ran[], question: DesignQuestion): readonly DesignRow[] {
  const coarse = ran[0]!.run;
  const priced = ran.map(({ design, run }, k) => {
    const year = yearOf(run, coarse, question);
    const { choice, breaks } = design;
    return { choice, own: k === 0, breaks, ...year, ...design.money(year)! };
  });
  // the own design stands beside the others; where it breaks a limit it beats none of them
  const within = priced.filter(({ breaks }) => breaks === null);
  const flags = (gain: (row: DesignYear) => number) => {
    const kept = unbeaten(within.map((row) => ({ cost: row.capital, gain: gain(row) })));
    return priced.map((row) => kept[within.indexOf(row)] ?? false);
  };
  const [heat, hours] = [flags((row) => row.saved), flags((row) => row.cropHoursAvoided)];
  return priced.map((row, k) => ({ ...row, bestForHeat: heat[k]!, bestForHours: hours[k]! }))
    .toSorted((a, b) => a.capital - b.capital || b.saved - a.saved);
}

function searchOf(
  ran: readonly Ran[],
  question: DesignQuestion,
  { refused, judged }: {
    readonly refused: ReadonlyMap<string, string>;
    readonly judged: number;
  },
): DesignSearch {
  const rows = rowsOf(ran, question);
  const counts: Record<string, number> = {};
  for (const why of [...refused.values()].sort()) counts[why] = (counts[why] ?? 0) + 1;
  const { worth, own } = question;
  const coarse = ran[0]!.run;
  const fineHeat = worth.energy.backupHeatNoFan - own.saved;
  return {
    currency: worth.inputs.prices!.currency,
    rows,
    best: bestOf(rows),
    judged,
    refused: counts,
    runs: ran.length,
    savedResolution: Math.abs(coarse.heat - fineHeat),
    hoursResolution: Math.abs(coarse.hours - own.hours),
  };
}
