/** Exercises with checked answers and hints for the usual slips. @module */
import type { DisplayItem } from "./figure.ts";
import { escapeMarkup } from "./escape.ts";
import { unitSlips } from "./unit_slips.ts";
import { type Kind, parseQuantity } from "../../units/mod.ts";

/** A wrong answer people often give, and what it tells about the way they took. */
export interface UsualSlip {
  /** in the unit of the answer, or the wrong word */
  readonly value: number | string;
  /** help after this slip */
  readonly hint: string;
  /** of a choice: only where the reason typed behind the word matches */
  readonly because?: RegExp;
  /** of a choice: true for a word that people type though it is not among those offered */
  readonly unoffered?: true;
}

/** One exercise. */
export interface Exercise {
  /** chapter and name: "soil.penetration" */
  readonly id: string;
  /** what is asked */
  readonly question: string;
  /** the quantity asked for, as hints name it: "the penetration depth" */
  readonly asked?: string;
  /** kind of quantity asked for, or "choice" for one of several words */
  readonly kind: Kind | "choice";
  /** value in the inside unit of the kind (energy in kWh), or the right word */
  readonly answer: number | string;
  /** relative */
  readonly tolerance: number;
  /** usual wrong answers and what they show */
  readonly slips: readonly UsualSlip[];
  /** shown with the right answer */
  readonly explanation: string;
  /** what helps to begin, and what helps further; given where a learner answers "hint", "second hint" */
  readonly hints?: readonly [first: string, second: string];
  /** the way to the answer, step by step; given where a learner answers "solution" */
  readonly solution?: string;
  /** unit of a bare number; without it a bare number is refused where the kind has a unit */
  readonly bareUnit?: string;
  /** what a plain number counts: words that may stand behind it, such as "tubes" */
  readonly counted?: readonly string[];
}

/** Outcome of a check. */
export interface Verdict {
  /** where the answer stands */
  readonly state: "open" | "right" | "wrong" | "unreadable" | "hint" | "solution";
  /** what the learner is told */
  readonly message: string;
}

/**
 * Compares an answer with the exercise.
 *
 * @param exercise what was asked
 * @param given what the reader wrote, with its unit; null while it is open
 */
export function judge(exercise: Exercise, given: string | number | null): Verdict {
  if (given === null || given === "") {
    return { state: "open", message: openText(exercise) };
  }
  const help = helpAsked(exercise, String(given));
  if (help !== undefined) return help;
  if (exercise.kind === "choice") return judgeChoice(exercise, String(given));
  let value: number;
  try {
    value = parseQuantity(plainAnswer(exercise, String(given)), exercise.kind);
  } catch (error) {
    return { state: "unreadable", message: (error as Error).message };
  }
  if (near(value, Number(exercise.answer), exercise.tolerance)) return right(exercise);
  const slip = typicalSlips(exercise).find((one) =>
    near(value, Number(one.value), exercise.tolerance)
  );
  return { state: "wrong", message: slip?.hint ?? missText(value, Number(exercise.answer)) };
}

function openText({ hints, slips }: Exercise): string {
  const ladder = hints === undefined ? "" : ', or with "hint", "second hint" or "solution"';
  const reason = slips.some(({ because }) => because !== undefined)
    ? " Your reason may follow behind a comma."
    : "";
  return `Not answered yet: replace null with your answer${ladder}.${reason}`;
}

/**
 * The slips that get a hint of their own: those of the exercise, then numbers that fit in another unit.
 *
 * @param exercise what was asked
 */
export function typicalSlips(exercise: Exercise): readonly UsualSlip[] {
  const { kind, answer, tolerance, slips, asked = "the answer" } = exercise;
  if (kind === "choice") return slips;
  const taken = [Number(answer), ...slips.map(({ value }) => Number(value))];
  const all = [...slips];
  for (const { factor, hint } of unitSlips(kind, asked)) {
    const value = Number(answer) * factor;
    const apart = (other: number) =>
      Math.abs(value - other) > tolerance * (Math.abs(value) + Math.abs(other));
    if (!taken.every(apart)) continue;
    taken.push(value);
    all.push({ value, hint });
  }
  return all;
}

/** The step of the ladder that is asked for in place of an answer. */
function helpAsked({ hints, solution }: Exercise, given: string): Verdict | undefined {
  const words = given.trim().toLowerCase().replace(/[.!?]+$/, "");
  if (/^(?:worked )?solution$/.test(words)) {
    const none = "This exercise has no worked solution.";
    return { state: "solution", message: solution ?? none };
  }
  const step = /^(?:(?:first )?hint|hint 1)$/.test(words)
    ? 0
    : /^(?:second hint|hint 2)$/.test(words)
    ? 1
    : undefined;
  if (step === undefined) return undefined;
  return { state: "hint", message: hints?.[step] ?? "This exercise has no hints of its own." };
}

/** The quantity in an answer: without "about" and full stop, with the unit a bare number has here. */
function plainAnswer(exercise: Exercise, given: string): string {
  const plain = given.trim()
    .replace(/^(?:=|≈|~|about|approx\.?|roughly|ca\.?)\s*/i, "")
    .replace(/[.!]+$/, "");
  const counted = (exercise.counted ?? []).find((word) => plain.endsWith(word));
  const number = counted === undefined ? plain : plain.slice(0, -counted.length).trim();
  const bare = /^[-+\u2212]?[\d.]+(?:e[-+]?\d+)?$/i.test(number);
  return bare && exercise.bareUnit !== undefined ? `${number} ${exercise.bareUnit}` : number;
}

/** Words that turn a choice into its opposite. */
const NEGATIONS = ["not", "never", "neither", "nor", "isn't", "doesn't"];

/** What stands between a choice and the reason for it. */
const BEFORE_REASON = /[,;:(\u2013\u2014]|\s-\s|\b(?:because|since|as|for)\b/u;

const wordsOf = (text: string): readonly string[] => text.match(/[\p{L}']+/gu) ?? [];

/** The one choice that stands in an answer, as the word itself or within a few words, and its reason. */
function judgeChoice(exercise: Exercise, given: string): Verdict {
  const text = given.toLowerCase();
  const cut = text.search(BEFORE_REASON);
  const [head, reason] = cut > 0 ? [text.slice(0, cut), text.slice(cut)] : [text, ""];
  const known = new Set([exercise.answer, ...exercise.slips.map(({ value }) => value)].map(String));
  const named = [...known].filter((choice) => wordsOf(head).includes(choice));
  const choice = named[0];
  const clear = named.length === 1 &&
    !wordsOf(head).some((word) => word !== choice && NEGATIONS.includes(word));
  const same = choice === exercise.answer;
  if (!clear || (same && choices(exercise).some((other) => wordsOf(reason).includes(other)))) {
    return {
      state: "unreadable",
      message: `Answer with one of: ${choices(exercise).join(", ")}.`,
    };
  }
  if (same) return right(exercise);
  const slips = exercise.slips.filter(({ value }) => value === choice);
  const slip = slips.find(({ because }) => because?.test(reason)) ??
    slips.find(({ because }) => because === undefined)!;
  return { state: "wrong", message: slip.hint };
}

function choices({ answer, slips }: Exercise): string[] {
  const offered = slips.filter(({ unoffered }) => unoffered !== true).map(({ value }) => value);
  return [...new Set([answer, ...offered].map(String))].sort();
}

function right(exercise: Exercise): Verdict {
  return { state: "right", message: exercise.explanation };
}

function near(value: number, target: number, tolerance: number): boolean {
  return Math.abs(value - target) <= tolerance * Math.abs(target);
}

/** Factors by which sums of every kind go wrong, and what to look for. */
const FACTORS: readonly (readonly [factor: number, hint: string])[] = [
  [
    2,
    "Too large. Look for a 2: a half left out, a diameter for a radius, something counted twice.",
  ],
  [
    1 / 2,
    "Too small. Look for a 2: a half too many, a radius for a diameter, one of two forgotten.",
  ],
  [4, "Too large. Look for a 4: the square of a diameter where a radius belongs."],
  [1 / 4, "Too small. Look for a 4: the square of a radius where a diameter belongs."],
  [Math.PI, "Too large. Look for π: does it belong there?"],
  [1 / Math.PI, "Too small. Look for π: is it missing?"],
  [10, "Too large. Look at the decimal point."],
  [1 / 10, "Too small. Look at the decimal point."],
  [100, "Too large. Per cent, or centimetres: check the units."],
  [1 / 100, "Too small. Per cent, or centimetres: check the units."],
  [1000, "Too large. Check the units: kilo, milli."],
  [1 / 1000, "Too small. Check the units: kilo, milli."],
  [3600, "Too large. Check the units: hours and seconds."],
  [1 / 3600, "Too small. Check the units: hours and seconds."],
  [3.6, "Too large. Check the units: kilowatt-hours and megajoules."],
  [1 / 3.6, "Too small. Check the units: kilowatt-hours and megajoules."],
  [24, "Too large. Check the units: days and hours."],
  [1 / 24, "Too small. Check the units: days and hours."],
];

/** Share within which a factor is taken for one of these. */
const SAME_FACTOR = 0.005;

function missText(value: number, answer: number): string {
  if (value * answer < 0) return "The sign is wrong.";
  const ratio = Math.abs(value / answer);
  const known = FACTORS.find(([factor]) => near(ratio, factor, SAME_FACTOR));
  if (known !== undefined) return known[1];
  if (ratio > 30 || ratio < 1 / 30) return "Far off: check the units first.";
  return ratio > 1 ? "Too large." : "Too small.";
}

const STATE_WORDS: Readonly<Record<Verdict["state"], string>> = {
  open: "Open",
  right: "Right",
  wrong: "Not yet",
  unreadable: "Cannot read the answer",
  hint: "Hint",
  solution: "Worked solution",
};

/** Question and verdict as one display item. */
export function exerciseItem(asked: Exercise, given: string | number | null): DisplayItem {
  const verdict = judge(asked, given);
  const word = STATE_WORDS[verdict.state];
  return {
    "text/html": `<div class="exercise" style="border-left:6px solid #514c03;padding:8px 14px">` +
      `<strong>Exercise.</strong> ${escapeMarkup(asked.question)}<br>\n` +
      `<strong>${word}.</strong> ${escapeMarkup(verdict.message)}</div>`,
    "text/plain": `Exercise. ${asked.question}\n${word}. ${verdict.message}`,
  };
}
