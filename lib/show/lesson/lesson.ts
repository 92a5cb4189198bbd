/** An author's own lesson: its exercises, asked and counted. @module */
import { join } from "node:path";
import { InputError } from "../../basics/mod.ts";
import { readTextFile } from "../../study/mod.ts";
import { exerciseItem, judge, type Verdict } from "../kit/exercise.ts";
import type { DisplayItem } from "../kit/figure.ts";
import { numbers as numberTable } from "../kit/table.ts";
import { EXERCISE_FILE, readLessonFile } from "./lesson_file.ts";
import { exerciseFor, seedOf } from "./numbers.ts";

/** Names the folder in which a lesson's files lie, where the kernel runs elsewhere. */
export const LESSON_FOLDER = "WINTERGROUND_LESSONS";

/** What came of one exercise. */
interface Outcome {
  /** the last verdict */
  readonly state: Verdict["state"];
  /** answers given that were read and not right */
  readonly wrong: number;
  /** true once the worked solution was shown */
  readonly solution: boolean;
}

/** A lesson's exercises for one learner. */
export interface Lesson {
  /**
   * Asks an exercise and judges the answer.
   *
   * @param id as in the file of exercises
   * @param given the answer with its unit; "hint", "second hint" or "solution"; null while open
   * @throws {RangeError} for an unknown id; the message lists the known ones
   */
  exercise(id: string, given: string | number | null): DisplayItem;
  /**
   * Counts the exercises that are right so far, and writes the count beside the lesson; nothing is
   * written where a study runs the lesson.
   */
  score(): Promise<DisplayItem>;
}

/**
 * Opens the exercises of a lesson, which lie beside its notebook in `NAME.exercises.yaml`.
 *
 * @param name of the lesson: the file name of its notebook without ending
 * @param learner any name; each has numbers of its own, the same each time
 * @throws {InputError} where the file is missing or faulty
 */
export async function openLesson(name: string, learner = ""): Promise<Lesson> {
  const run = Deno.env.get(LESSON_FOLDER); // a run answers nothing, so it keeps no score
  const folder = run || Deno.cwd();
  const path = join(folder, `${name}${EXERCISE_FILE}`);
  const text = await readTextFile(path, "exercises of a lesson", "settings");
  const written = readLessonFile(text, path);
  const asked = written.map((one) => {
    try {
      return exerciseFor(one, learner);
    } catch (error) {
      throw new InputError(`Cannot use the exercise "${one.id}": ${(error as Error).message}`, {
        file: path,
      });
    }
  });
  const outcomes = new Map<string, Outcome>();
  return {
    exercise(id, given) {
      const found = asked.find((one) => one.id === id);
      if (found === undefined) {
        const known = asked.map((one) => one.id).join(", ");
        throw new RangeError(`Cannot find exercise "${id}": the lesson's are ${known}`);
      }
      const { state } = judge(found, given);
      const before = outcomes.get(id);
      outcomes.set(id, {
        state,
        wrong: (before?.wrong ?? 0) + (state === "wrong" ? 1 : 0),
        solution: (before?.solution ?? false) || state === "solution",
      });
      return exerciseItem(found, given);
    },
    async score() {
      const rows = asked.map(({ id }) => ({ id, ...(outcomes.get(id) ?? UNASKED) }));
      const right = rows.filter(({ state }) => state === "right").length;
      const record = { lesson: name, learner, right, of: rows.length, exercises: rows };
      const file = `${name}.score-${(seedOf(learner) >>> 0).toString(16)}.json`;
      if (!run) {
        await Deno.writeTextFile(join(folder, file), JSON.stringify(record, null, 2) + "\n");
      }
      return numberTable([
        { label: "exercises right", value: right, kind: "count" },
        { label: "exercises in this lesson", value: rows.length, kind: "count" },
      ]);
    },
  };
}

const UNASKED: Outcome = { state: "open", wrong: 0, solution: false };
