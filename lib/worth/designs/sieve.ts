/** The first sieve: climbs on the quick estimate, within the limits. @module */
import { each, type Steps, type Task } from "../../basics/mod.ts";
import {
  choiceKey,
  designAxes,
  neighbours,
  ownChoice,
  pairNeighbours,
  QUICK_KEYS,
} from "./choices.ts";
import { type BuiltDesign, designJudge } from "./judge.ts";
import { presentValues } from "./present_values.ts";
import type { DesignChoice, DesignQuestion } from "./types.ts";
import { unbeaten } from "./unbeaten.ts";

/** A few climbs. */
export interface SieveQuestion {
  /** the study */
  readonly question: DesignQuestion;
  /** how much more than its money a kWh counts in each: 1 climbs to the greatest net savings, 0 to the least cost; ratios */
  readonly heatCounts: readonly number[];
}

/** A design within the limits with what the quick estimate makes of it. */
export interface SievedDesign extends Pick<BuiltDesign, "choice" | "speed" | "headers"> {
  /** money of the first cost less grants */
  readonly capital: number;
  /** kWh a year */
  readonly saved: number;
  /** kWh a year of the fans' electricity */
  readonly fanEnergy: number;
}

/** What the climbs saw. */
export interface SieveAnswer {
  /** designs within the limits, for each climb the best first */
  readonly good: readonly (readonly SievedDesign[])[];
  /** the limit that each refused design breaks, by design */
  readonly refused: ReadonlyMap<string, string>;
  /** designs judged */
  readonly judged: readonly string[];
}

/** Designs that start a climb besides the study's own, drawn in this many tries. */
const STARTS = 3;
const TRIES = 200;

/** Numbers in [0, 1), always the same: a linear congruential row. */
function drawing(): () => number {
  let state = 20_077;
  return () => {
    state = (1_664_525 * state + 1_013_904_223) % 2 ** 32;
    return state / 2 ** 32;
  };
}

/**
 * Climbs from the own design and a few drawn ones, a part at a time and then two that hang
 * together, until no change is better. What
 * one climb has judged the next one knows; it moves none of them.
 */
export function sieve({ question, heatCounts }: SieveQuestion): SieveAnswer {
  const axes = designAxes(question);
  const seen = new Map<string, BuiltDesign | null>();
  const refused = new Map<string, string>();
  const { heat: value } = presentValues(question);
  const judge = designJudge(question);
  const look = (choice: DesignChoice): BuiltDesign | null => {
    const key = choiceKey(choice);
    const before = seen.get(key);
    if (before !== undefined) return before;
    const judged = judge(choice);
    const why = typeof judged === "string" ? judged : judged.breaks;
    if (why !== null) refused.set(key, why);
    const built = why === null ? judged as BuiltDesign : null;
    seen.set(key, built);
    return built;
  };
  const random = drawing();
  const draw = (): DesignChoice => {
    const pick = <T>(values: readonly T[]): T => values[Math.floor(random() * values.length)]!;
    const drawn: Record<string, unknown> = { ...ownChoice(question) };
    for (const key of QUICK_KEYS) drawn[key] = pick<unknown>(axes[key]);
    return drawn as unknown as DesignChoice;
  };
  const drawn = Array.from({ length: TRIES }, draw);
  const climbs = heatCounts.map((heatCount) => {
    const here = new Map<BuiltDesign, number>();
    const score = (choice: DesignChoice): number => {
      const built = look(choice);
      if (built === null) return -Infinity;
      const found = here.get(built) ?? built.money(built.estimate)!.netSavings +
          (heatCount - 1) * value * built.estimate.saved;
      here.set(built, found);
      return found;
    };
    const starts = drawn.map((choice) => ({ choice, score: score(choice) }))
      .filter(({ score }) => score > -Infinity)
      .sort((a, b) => b.score - a.score).slice(0, STARTS);
    for (const start of [ownChoice(question), ...starts.map(({ choice }) => choice)]) {
      climb(start, [
        (choice) => neighbours(choice, axes, QUICK_KEYS),
        (choice) => pairNeighbours(choice, axes),
      ], score);
    }
    return [...here].sort(([, a], [, b]) => b - a).map(([built]) => sievedOf(built));
  });
  return { good: climbs, refused, judged: [...seen.keys()] };
}

/**
 * From one design to the best beside it, until none beside it is better. What lies beside it in a later
 * way is looked at only where the ways before find nothing better.
 */
function climb(
  start: DesignChoice,
  ways: readonly ((choice: DesignChoice) => readonly DesignChoice[])[],
  score: (choice: DesignChoice) => number,
): void {
  let here = { choice: start, score: score(start) };
  for (let way = 0; way < ways.length;) {
    const best = ways[way]!(here.choice).map((choice) => ({ choice, score: score(choice) }))
      .reduce((most, one) => one.score > most.score ? one : most, here);
    way = best === here ? way + 1 : 0;
    here = best;
  }
}

/** A built design as the climbs saw it. */
export function sievedOf({ choice, speed, headers, estimate, money }: BuiltDesign): SievedDesign {
  return {
    choice,
    speed,
    headers,
    capital: money(estimate)!.capital,
    saved: estimate.saved,
    fanEnergy: estimate.fanEnergy,
  };
}

/** Climbs on another thread. */
export const sieveTask: Task<SieveQuestion, SieveAnswer> = { name: "worth.sieve", run: sieve };

/** How much a kWh counts over its money in the climbs, the greatest net savings first, 0 for the least cost; by thread. */
const HEAT_COUNTS = [[1, 2], [0, 4, 10]];

/** All climbs of a study. */
export function sieveSteps(question: DesignQuestion): Steps<SieveAnswer[]> {
  return each(sieveTask, HEAT_COUNTS.map((heatCounts) => ({ question, heatCounts })));
}

/** Designs that no other one of the climbs beats in first cost and heat, by rising cost. */
export function sievedFront(climbs: readonly SieveAnswer[]): readonly SievedDesign[] {
  const all = [
    ...new Map(climbs.flatMap(({ good }) => good.flat()).map((one) => [choiceKey(one.choice), one]))
      .values(),
  ];
  const kept = unbeaten(all.map(({ capital, saved }) => ({ cost: capital, gain: saved })));
  return all.filter((_, k) => kept[k]).sort((a, b) => a.capital - b.capital);
}

/**
 * A number of designs out of a front, evenly by their place in it, which is that of their cost: the
 * cheapest and the dearest among them.
 *
 * @param front by rising cost
 * @param count of designs wanted
 */
export function spreadOver<F>(front: readonly F[], count: number): readonly F[] {
  if (front.length <= count) return front;
  if (count === 1) return [front[0]!];
  return Array.from(
    { length: count },
    (_, place) => front[Math.round(place * (front.length - 1) / (count - 1))]!,
  );
}
