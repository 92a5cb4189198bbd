/** The exercises of an author's own lesson: a YAML file beside the notebook. @module */
import { z } from "zod";
import { InputError } from "../../basics/mod.ts";
import { KINDS } from "../../units/mod.ts";
import { parseYaml } from "../../study/file/yaml_source.ts";

const TEXT = z.string().trim().min(1);
const FORMULA = z.union([z.number(), TEXT]);

const EXERCISE = z.strictObject({
  id: z.string().regex(/^[a-z][\w-]*$/i, "expected a word such as pressure-drop"),
  question: TEXT,
  kind: z.union([z.literal("choice"), z.enum(Object.keys(KINDS) as [string, ...string[]])]),
  numbers: z.record(
    z.string().regex(/^[a-z]\w*$/i, "expected a name such as length"),
    z.strictObject({ from: z.number(), to: z.number(), step: z.number().positive() }),
  ).default({}),
  answer: FORMULA,
  unit: TEXT.optional(),
  tolerance: z.number().positive().max(0.2).default(0.02),
  slips: z.array(z.strictObject({ answer: FORMULA, hint: TEXT })).min(1),
  hints: z.tuple([TEXT, TEXT]),
  solution: TEXT,
  explanation: TEXT,
});

const LESSON = z.strictObject({
  exercises: z.array(EXERCISE).min(1),
});

/** An exercise as its author wrote it: formulas with the names of its numbers. */
export type WrittenExercise = z.infer<typeof EXERCISE>;

/** Ending of the file with the exercises of a lesson. */
export const EXERCISE_FILE = ".exercises.yaml";

/**
 * Reads the exercises of a lesson.
 *
 * @param text of the file
 * @param file its path, for messages
 * @throws {InputError} with file and line of the first fault
 */
export function readLessonFile(text: string, file: string): readonly WrittenExercise[] {
  const source = parseYaml(text, file);
  const read = LESSON.safeParse(source.data);
  if (!read.success) {
    const { path, message } = read.error.issues[0]!;
    throw new InputError(
      `Cannot read the exercises: ${path.join(".") || "the file"}: ${message}`,
      source.locate(path),
    );
  }
  const { exercises } = read.data;
  const fault = (k: number, key: string, text: string) =>
    new InputError(`Cannot use the exercise "${exercises[k]!.id}": ${text}`, {
      ...source.locate(["exercises", k, key]),
    });
  exercises.forEach(({ id, kind, unit, answer, slips, numbers }, k) => {
    if (exercises.findIndex((one) => one.id === id) < k) throw fault(k, "id", "its id is taken");
    const words = [answer, ...slips.map((slip) => slip.answer)];
    if (kind === "choice") {
      if (words.some((word) => typeof word !== "string" || !/^\p{L}+$/u.test(word))) {
        throw fault(k, "answer", "a choice has one word as its answer and for each slip");
      }
      return;
    }
    if (unit === undefined) throw fault(k, "kind", 'it has no "unit", in which the answer is');
    for (const [name, { from, to, step }] of Object.entries(numbers)) {
      if (to < from || (to - from) / step > 1e4) {
        throw fault(k, "numbers", `"${name}" has no steps, or too many: give from, to and step`);
      }
    }
  });
  return exercises;
}
