/** Tube ends set more and less carefully. @module */
import { showRange } from "../units/mod.ts";
import { firstGroup, type HeadersQuestion } from "./first_group.ts";
import {
  FLANGED,
  scatterWorkmanship,
  type Workmanship,
  type WorkmanshipResult,
} from "./workmanship.ts";

/** Ends between flush and 25 mm in, half of the holes with a burr; common practice, no source. */
const CARELESS = { insertionMin: 0, insertionMax: 0.025, burrShare: 0.5, burrLoss: 0.5 };
const TRIALS = 100;

/**
 * A hundred fields with carelessly set tube ends; the same ones every time.
 *
 * @param question headers, tubes and air
 */
export function carelessEnds(question: HeadersQuestion): WorkmanshipResult {
  const { group, airFlow } = firstGroup(question);
  return scatterWorkmanship(group, airFlow, { workmanship: CARELESS, trials: TRIALS, seed: 1 });
}

/** One way to set the tube ends. */
export interface WorkmanshipStudy {
  /** what was done */
  readonly name: string;
  /** spread over the drawn fields */
  readonly result: WorkmanshipResult;
}

/**
 * Flanged connectors, careless ends and very careless ones, a hundred fields each. "Very careless"
 * goes to 100 mm or a third of the header, whichever is less.
 *
 * @param question headers, tubes and air
 */
export function workmanshipStudies(question: HeadersQuestion): WorkmanshipStudy[] {
  const { group, airFlow } = firstGroup(question);
  const deep = Math.min(0.1, question.inputs.diameter / 3);
  const into = (most: number) => showRange(0, most, "smallLength");
  const ways: readonly (readonly [string, Workmanship])[] = [
    ["flanged, all flush", FLANGED],
    [`${into(0.025)} in, burrs at half`, CARELESS],
    [
      `${into(deep)} in, large burrs at half`,
      { insertionMin: 0, insertionMax: deep, burrShare: 0.5, burrLoss: 0.8 },
    ],
  ];
  return ways.map(([name, workmanship]) => ({
    name,
    result: scatterWorkmanship(group, airFlow, { workmanship, trials: TRIALS, seed: 1 }),
  }));
}
