/** Other designs of the store, searched on the settled year. @module */
import { alone, type Steps } from "../../basics/mod.ts";
import { worthMoney } from "../compute.ts";
import { ADDED_KEYS, ALL_KEYS, choiceKey, designAxes, neighbours, ownChoice } from "./choices.ts";
import { type BuiltDesign, designJudge } from "./judge.ts";
import {
  bestParts,
  cheapestHeat,
  designRows,
  greatestSavings,
  ownGivesUp,
  type RanDesign,
  resolutionOf,
} from "./rows.ts";
import { sievedFront, sieveSteps, spreadOver } from "./sieve.ts";
import type { DesignChoice, DesignQuestion, DesignRow, DesignSearch } from "./types.ts";
import { type DesignYears, settledDesigns } from "./years.ts";

/** Share of the years left that the sieve's designs get; the rest goes to neighbours of the unbeaten. */
const FROM_SIEVE = 0.5;
/** Years of a round, so that what one finds leads the next, and several workers have enough to do. */
const ROUND = 6;

/**
 * Searches. The quick estimate climbs to designs worth a year. What it cannot tell apart, control and
 * the board at the edge, is tried on the own design first; then the climbs' designs with the best of
 * that, and round by round the neighbours of the ones that no other beats, go through the settled year
 * on the coarse mesh. Values
 * are the own design's of the study moved by the difference between coarse years, so that the own row
 * has the study's own figures.
 *
 * @param question the study
 * @param years the year of each design, the study's own first; the settled year unless given
 * @returns null where it was not asked for, or heat, electricity or the own design has no price
 */
export function* designSteps(
  question: DesignQuestion,
  years: DesignYears = settledDesigns(question.request),
): Steps<DesignSearch | null> {
  const { wanted, worth } = question;
  if (!wanted || worth.inputs.prices === null || worthMoney(worth).parts === null) return null;
  const judge = designJudge(question);
  const own = judge(ownChoice(question));
  if (typeof own === "string" || own.money(own.estimate) === null) return null;
  const climbs = yield* sieveSteps(question);
  const refused = new Map(climbs.flatMap((climb) => [...climb.refused]));
  const judged = new Set(climbs.flatMap((climb) => climb.judged));
  const ran: RanDesign[] = [];
  const taken = new Set([choiceKey(own.choice)]);
  const run = function* (designs: readonly BuiltDesign[]): Steps<void> {
    const found = yield* years(designs);
    designs.forEach((design, k) => ran.push({ design, run: found[k]! }));
  };
  const take = (choices: Iterable<DesignChoice>, most: number): readonly BuiltDesign[] => {
    const designs: BuiltDesign[] = [];
    for (const choice of choices) {
      if (designs.length >= most) break;
      const key = choiceKey(choice);
      if (taken.has(key) || refused.has(key)) continue;
      const design = judge(choice);
      judged.add(key);
      const why = typeof design === "string" ? design : design.breaks;
      if (why !== null) refused.set(key, why);
      else {
        taken.add(key);
        designs.push(design as BuiltDesign);
      }
    }
    return designs;
  };
  const most = Math.max(2, worth.inputs.searchRuns);
  const axes = designAxes(question);
  yield* run([own, ...take(neighbours(own.choice, axes, ADDED_KEYS), Math.floor(most / 2))]);
  const added = bestParts(designRows(ran, question), ADDED_KEYS);
  const fromSieve = Math.round(FROM_SIEVE * (most - taken.size));
  const tops = climbs.flatMap(({ good }) =>
    good.flatMap(([top]) => top === undefined ? [] : [top])
  );
  const spread = spreadOver(sievedFront(climbs), Math.max(1, fromSieve - tops.length));
  const sieved = [...tops, ...spread].map(({ choice }) => ({ ...choice, ...added }));
  yield* run(take(sieved, fromSieve));
  for (let round = 0; taken.size < most; round++) {
    const leaders = leadersOf(designRows(ran, question), question, ran[0]!);
    const beside = leaders.map(({ choice }) =>
      neighbours(choice, axes, ALL_KEYS.map((_, k) => ALL_KEYS[(k + round) % ALL_KEYS.length]!))
        .map((one) => ({ choice: one, key: choiceKey(one) }))
    );
    // those of whose neighbours fewest were looked at come first
    const looked = (all: typeof beside[number]) =>
      all.filter(({ key }) => taken.has(key) || refused.has(key)).length / all.length;
    const inOrder = beside.toSorted((a, b) => looked(a) - looked(b))
      .map((all) => all.map(({ choice }) => choice));
    const designs = take(inTurn(inOrder), Math.min(ROUND, most - taken.size));
    if (designs.length === 0) break;
    yield* run(designs);
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

/** The greatest net savings first, then the cheapest heat, then the other unbeaten ones. */
function leadersOf(
  rows: readonly DesignRow[],
  question: DesignQuestion,
  own: RanDesign,
): readonly DesignRow[] {
  const heads = [greatestSavings(rows), cheapestHeat(rows, resolutionOf(own.run, question))];
  const unbeaten = rows.filter((row) => row.bestForHeat || row.bestForHours);
  return [...new Set([...heads.filter((row) => row !== null), ...unbeaten])];
}

function searchOf(
  ran: readonly RanDesign[],
  question: DesignQuestion,
  { refused, judged }: {
    readonly refused: ReadonlyMap<string, string>;
    readonly judged: number;
  },
): DesignSearch {
  const rows = designRows(ran, question);
  const resolution = resolutionOf(ran[0]!.run, question);
  const counts: Record<string, number> = {};
  for (const why of [...refused.values()].sort()) counts[why] = (counts[why] ?? 0) + 1;
  return {
    currency: question.worth.inputs.prices!.currency,
    rows,
    best: greatestSavings(rows),
    cheapest: cheapestHeat(rows, resolution),
    givesUp: ownGivesUp(rows, resolution),
    judged,
    refused: counts,
    runs: ran.length,
    savedResolution: resolution.saved,
    hoursResolution: resolution.hours,
  };
}
