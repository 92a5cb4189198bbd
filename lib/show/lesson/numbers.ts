/** Exercises with numbers of each learner's own, drawn from the learner's name. @module */
import type { MathJsInstance } from "mathjs";
import inOneFile from "mathjs/lib/browser/math.js";
import { xoroshiro128plus } from "pure-rand/generator/xoroshiro128plus";
import { uniformInt } from "pure-rand/distribution/uniformInt";
import { type Kind, parseQuantity } from "../../units/mod.ts";
import type { Exercise } from "../kit/exercise.ts";
import type { WrittenExercise } from "./lesson_file.ts";

/** Values by the names an exercise gives them. */
export type DrawnNumbers = Readonly<Record<string, number>>;

/** A whole number from a text: FNV-1a, 32 bits (public domain; from memory). */
export function seedOf(text: string): number {
  let hash = 0x811c9dc5;
  for (const byte of new TextEncoder().encode(text)) {
    hash = Math.imul(hash ^ byte, 0x01000193);
  }
  return hash | 0;
}

/** The numbers of an exercise for one learner; the same for the same name. */
export function drawNumbers({ id, numbers }: WrittenExercise, learner: string): DrawnNumbers {
  const random = xoroshiro128plus(seedOf(`${learner}\0${id}`));
  return Object.fromEntries(
    Object.entries(numbers).map(([name, { from, to, step }]) => {
      const steps = Math.floor((to - from) / step + 1e-9);
      const value = from + step * uniformInt(random, 0, steps);
      return [name, Number(value.toPrecision(12))];
    }),
  );
}

/** Read module by module, the same library takes half a second of every start. */
const { parse }: Pick<MathJsInstance, "parse"> = inOneFile;

const PARTS = ["ConstantNode", "SymbolNode", "OperatorNode", "ParenthesisNode", "FunctionNode"];
const FUNCTIONS: Readonly<Record<string, unknown>> = {
  sqrt: Math.sqrt,
  exp: Math.exp,
  log: Math.log,
  abs: Math.abs,
  min: Math.min,
  max: Math.max,
  pi: Math.PI,
};

/**
 * Works out a formula of an exercise.
 *
 * @param formula sums, products, powers, brackets, pi, sqrt, exp, log, abs, min, max
 * @param numbers values of its names
 * @throws {RangeError} where it holds anything else, an unknown name, or gives no number
 */
export function formulaValue(formula: string | number, numbers: DrawnNumbers): number {
  if (typeof formula === "number") return formula;
  const refuse = (why: string) => new RangeError(`Cannot work out "${formula}": ${why}`);
  let tree;
  try {
    tree = parse(formula);
  } catch (error) {
    throw refuse((error as Error).message);
  }
  const names = new Map(Object.entries({ ...FUNCTIONS, ...numbers }));
  tree.traverse((node) => {
    if (!PARTS.includes(node.type)) throw refuse("it holds more than sums, products and functions");
    const name = (node as { readonly name?: unknown }).name;
    if (node.type === "SymbolNode" && !names.has(String(name))) {
      throw refuse(`"${name}" is none of its names: ${[...names.keys()].join(", ")}`);
    }
  });
  const value: unknown = tree.evaluate(names);
  if (typeof value === "number" && Number.isFinite(value)) return value;
  throw refuse("it gives no number");
}

/** The text with the learner's numbers in place of `{name}`. */
function filled(text: string, numbers: DrawnNumbers): string {
  return text.replaceAll(/\{(\w+)\}/g, (whole, name) => {
    const value = numbers[name];
    if (value === undefined) throw new RangeError(`Cannot fill in ${whole}: no such number`);
    return String(value);
  });
}

/**
 * An exercise with a learner's numbers.
 *
 * @throws {RangeError} where a formula or a text names what is not there, or the unit does not fit
 */
export function exerciseFor(written: WrittenExercise, learner: string): Exercise {
  const { id, question, kind, answer, unit, tolerance, slips, hints, solution, explanation } =
    written;
  const numbers = drawNumbers(written, learner);
  const fill = (text: string) => filled(text, numbers);
  const value = (formula: string | number) =>
    kind === "choice"
      ? String(formula)
      : parseQuantity(`${formulaValue(formula, numbers)} ${unit}`, kind as Kind);
  return {
    id,
    question: fill(question),
    kind: kind as Exercise["kind"],
    answer: value(answer),
    tolerance,
    slips: slips.map(({ answer, hint }) => ({ value: value(answer), hint: fill(hint) })),
    explanation: fill(explanation),
    hints: [fill(hints[0]), fill(hints[1])],
    solution: fill(solution),
  };
}
