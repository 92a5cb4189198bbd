/** Exercises with checked answers and hints for the usual slips. @module */
import type { DisplayItem } from "./figure.ts";
import { escapeMarkup } from "./escape.ts";
import { type Kind, parseQuantity } from "../../units/mod.ts";

/** A wrong answer people often give, and what it tells about the way they took. */
export interface UsualSlip {
  /** in the unit of the answer, or the wrong word */
  readonly value: number | string;
  /** help after this slip */
  readonly hint: string;
}

/** One exercise. */
export interface Exercise {
  /** chapter and name: "soil.penetration" */
  readonly id: string;
  /** what is asked */
  readonly question: string;
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
  const slip = exercise.slips.find((one) => near(value, Number(one.value), exercise.tolerance));
  return { state: "wrong", message: slip?.hint ?? missText(value, Number(exercise.answer)) };
}

function openText({ hints }: Exercise): string {
  const ladder = hints === undefined ? "" : ', or with "hint", "second hint" or "solution"';
  return `Not answered yet: replace null with your answer${ladder}.`;
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

/** The one choice that stands in an answer, as the word itself or within a few words. */
function judgeChoice(exercise: Exercise, given: string): Verdict {
  const words: readonly string[] = given.toLowerCase().match(/[\p{L}']+/gu) ?? [];
  const named = choices(exercise).filter((choice) => words.includes(choice));
  const clear = named.length === 1 && !words.some((word) => NEGATIONS.includes(word));
  if (!clear) {
    return {
      state: "unreadable",
      message: `Answer with one of: ${choices(exercise).join(", ")}.`,
    };
  }
  if (named[0] === exercise.answer) return right(exercise);
  const slip = exercise.slips.find((one) => one.value === named[0])!;
  return { state: "wrong", message: slip.hint };
}

function choices(exercise: Exercise): string[] {
  return [exercise.answer, ...exercise.slips.map((slip) => slip.value)].map(String).sort();
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
