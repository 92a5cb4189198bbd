/** Other designs of the store, searched on the settled year. @module */
import { alone, type Steps } from "../../basics/mod.ts";
import { worthMoney } from "../compute.ts";
import {
  ADDED_KEYS,
  choiceKey,
  designAxes,
  halfSteps,
  neighbours,
  ownChoice,
  QUICK_KEYS,
} from "./choices.ts";
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
import { fieldKey, plainField, type PooledDesign, type PricedKnown, promising } from "./pool.ts";
import { presentValues } from "./present_values.ts";
import { sievedFront, sievedOf, sieveSteps, spreadOver } from "./sieve.ts";
import type { DesignChoice, DesignQuestion, DesignRow, DesignSearch } from "./types.ts";
import { type DesignYears, settledDesigns } from "./years.ts";

/** Share of the years left that the sieve's designs get; the rest goes to what the years so far foretell. */
const FROM_SIEVE = 0.4;
/** Years of a round, so that what one finds leads the next, and several workers have enough to do. */
const ROUND = 6;
/** Designs beside the leaders that a round judges at most, because each takes its headers' flows. */
const JUDGED_A_ROUND = 120;

/**
 * Searches. The quick estimate climbs to designs worth a year. What it cannot tell apart, control and
 * the board at the edge, is tried on the own design first; then some of the climbs' designs with the
 * best of that. From there on the years so far correct the estimate, round by round, and the designs
 * that are foretold to add most to the unbeaten ones go through the settled year on the coarse mesh.
 * Values are the own design's of the study moved by the difference between coarse years, so that the
 * own row has the study's own figures.
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
  const built = (choice: DesignChoice): BuiltDesign | null => {
    const key = choiceKey(choice);
    judged.add(key);
    const design = judge(choice);
    const why = typeof design === "string" ? design : design.breaks;
    if (why === null) return design as BuiltDesign;
    refused.set(key, why);
    return null;
  };
  const take = (choices: Iterable<DesignChoice>, most: number): readonly BuiltDesign[] => {
    const designs: BuiltDesign[] = [];
    for (const choice of choices) {
      if (designs.length >= most) break;
      const key = choiceKey(choice);
      if (taken.has(key) || refused.has(key)) continue;
      const design = built(choice);
      if (design === null) continue;
      taken.add(key);
      designs.push(design);
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
  const pool = new Map<string, PooledDesign>();
  const put = (one: PooledDesign) => pool.set(fieldKey(one.choice, own.choice), one);
  climbs.forEach(({ good }) => good.flat().forEach(put));
  const values = presentValues(question);
  while (taken.size < most) {
    const rows = designRows(ran, question);
    const leaders = leadersOf(rows, question, ran[0]!);
    const beside = byGap(leaders).flatMap(({ choice }) => {
      const plain = plainField(choice, own.choice);
      return [...neighbours(plain, axes, QUICK_KEYS), ...halfSteps(plain, axes)];
    });
    let tries = JUDGED_A_ROUND;
    for (const choice of beside) {
      const key = choiceKey(choice);
      if (pool.has(key) || refused.has(key)) continue;
      if (tries-- === 0) break;
      const design = built(choice);
      if (design !== null) put(sievedOf(design));
    }
    const wanted = promising(pool.values(), {
      question,
      axes,
      known: knownDesigns(ran, rows, question),
      values,
      done: (key) => taken.has(key) || refused.has(key),
    }, Math.min(ROUND, most - taken.size));
    const designs = take(wanted, ROUND);
    if (designs.length === 0) break;
    yield* run(designs);
  }
  return searchOf(ran, question, { refused, judged: judged.size });
}

/** The designs on either side of the widest step of the stairs first; beside the dearest it is open. */
function byGap(rows: readonly DesignRow[]): readonly DesignRow[] {
  const stairs = rows.toSorted((a, b) => a.capital - b.capital);
  const steps = stairs.map((row, k) => {
    const next = stairs[k + 1];
    const size = next === undefined
      ? Infinity
      : (next.capital - row.capital) * Math.abs(next.saved - row.saved);
    return { sides: next === undefined ? [row] : [row, next], size };
  });
  return [
    ...new Set(steps.sort((a, b) => a.size < b.size ? 1 : -1).flatMap(({ sides }) => sides)),
  ];
}

/** The designs run as the correction learns from them, the study's own first. */
function knownDesigns(
  ran: readonly RanDesign[],
  rows: readonly DesignRow[],
  { own }: DesignQuestion,
): readonly PricedKnown[] {
  const byKey = new Map(rows.map((row) => [choiceKey(row.choice), row]));
  return ran.map(({ design }) => {
    const row = byKey.get(choiceKey(design.choice))!;
    return {
      choice: design.choice,
      estimate: design.estimate,
      year: {
        saved: row.saved,
        fanEnergy: row.fanEnergy,
        hours: own.hours + own.cropHoursAvoided - row.cropHoursAvoided,
      },
      capital: row.capital,
      within: row.breaks === null,
    };
  });
}

/** The search, all done here. Parameters and result are those of {@link designSteps}. */
export function designSearch(question: DesignQuestion): DesignSearch | null {
  return alone(designSteps(question));
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
