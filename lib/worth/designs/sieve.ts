/** The first sieve: climbs on the quick estimate, within the limits. @module */
import type { Task } from "../../basics/mod.ts";
import { worthMoney } from "../compute.ts";
import { uniformPresentValueFactor } from "../money/factors.ts";
import { heatWorth } from "../money/plans.ts";
import { choiceKey, designAxes, neighbours, ownChoice, QUICK_KEYS } from "./choices.ts";
import { type BuiltDesign, judgeDesign } from "./judge.ts";
import type { DesignChoice, DesignQuestion } from "./types.ts";

/** One climb. */
export interface SieveQuestion {
  /** the study */
  readonly question: DesignQuestion;
  /** how much more than its money a kWh counts: 1 climbs to the greatest net savings; a ratio */
  readonly heatCounts: number;
}

/** What a climb saw. */
export interface SieveAnswer {
  /** within the limits, the best first */
  readonly good: readonly DesignChoice[];
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

/** Climbs from the own design and a few drawn ones, a part at a time, until no change is better. */
export function sieve({ question, heatCounts }: SieveQuestion): SieveAnswer {
  const axes = designAxes(question);
  const seen = new Map<string, { readonly built: BuiltDesign | null; readonly score: number }>();
  const refused = new Map<string, string>();
  const value = valueOfHeat(question);
  const look = (choice: DesignChoice) => {
    const key = choiceKey(choice);
    const before = seen.get(key);
    if (before !== undefined) return before;
    const judged = judgeDesign(choice, question);
    const why = typeof judged === "string" ? judged : judged.breaks;
    if (why !== null) refused.set(key, why);
    const built = why === null ? judged as BuiltDesign : null;
    const score = built === null
      ? -Infinity
      : built.money(built.estimate)!.netSavings + (heatCounts - 1) * value * built.estimate.saved;
    const found = { built, score };
    seen.set(key, found);
    return found;
  };
  const random = drawing();
  const draw = (): DesignChoice => {
    const pick = <T>(values: readonly T[]): T => values[Math.floor(random() * values.length)]!;
    const drawn: Record<string, unknown> = { ...ownChoice(question) };
    for (const key of QUICK_KEYS) drawn[key] = pick<unknown>(axes[key]);
    return drawn as unknown as DesignChoice;
  };
  const climb = (start: DesignChoice) => {
    let here = start;
    for (;;) {
      const score = look(here).score;
      const best = neighbours(here, axes, QUICK_KEYS)
        .map((choice) => ({ choice, score: look(choice).score }))
        .reduce((most, one) => one.score > most.score ? one : most, { choice: here, score });
      if (best.choice === here) return;
      here = best.choice;
    }
  };
  climb(ownChoice(question));
  const drawn = Array.from({ length: TRIES }, draw)
    .map((choice) => ({ choice, score: look(choice).score }))
    .filter(({ score }) => score > -Infinity)
    .sort((a, b) => b.score - a.score);
  for (const { choice } of drawn.slice(0, STARTS)) climb(choice);
  return {
    good: [...seen.values()].filter(({ built }) => built !== null)
      .sort((a, b) => b.score - a.score).map(({ built }) => built!.choice),
    refused,
    judged: [...seen.keys()],
  };
}

/** Money that a kWh saved in every year is worth today; 0 where heat has no price. */
function valueOfHeat({ worth }: DesignQuestion): number {
  const { parts } = worthMoney(worth);
  if (parts === null) return 0;
  const { rate, years } = parts.terms;
  return heatWorth(parts) * uniformPresentValueFactor(rate, years);
}

/** A climb on another thread. */
export const sieveTask: Task<SieveQuestion, SieveAnswer> = { name: "worth.sieve", run: sieve };
