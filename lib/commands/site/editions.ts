/**
 * What a lesson shows in place of its exercises: in the edition for students the question and two hints,
 * in the one for instructors the worked solution too. Code and outputs of such a cell are left out of
 * both, because a learner may have answered there.
 *
 * @module
 */
import type { CodeCell, Notebook } from "../../press/mod.ts";
import { escapeHtml } from "../../press/markdown.ts";
import type { ExerciseCell } from "../../press/site/mod.ts";
import type { Exercise } from "../../show/kit/exercise.ts";

/** Whom a site is for. */
export type Edition = "student" | "instructor";

/** The editions. */
export const EDITIONS: readonly Edition[] = ["student", "instructor"];

/** An exercise is asked by its id, in the words of the notebook. */
const ASKED = /\bexercise\(\s*(["'`])([\w.-]+)\1/g;

/** A count of right answers. */
const COUNTED = /\.score\(/;

/**
 * What stands in place of the cells with exercises.
 *
 * @param edition whom it is for
 * @param exercises those that the lesson can ask, by id
 */
export function exerciseCells(
  edition: Edition,
  exercises: ReadonlyMap<string, Exercise>,
): ExerciseCell {
  return (cell) => {
    if (!isExercise(cell)) return COUNTED.test(cell.source) ? "" : null;
    return Array.from(cell.source.matchAll(ASKED), ([, , id]) => {
      const found = exercises.get(id!);
      return found === undefined ? unknown(id!) : exerciseHtml(found, edition);
    }).join("\n");
  };
}

/** True for a cell that asks an exercise, or shows one however it came there. */
function isExercise({ source, outputs }: CodeCell): boolean {
  return source.matchAll(ASKED).next().done !== true ||
    outputs.some((output) =>
      "data" in output && String(output.data["text/html"] ?? "").includes('class="exercise"')
    );
}

function unknown(id: string): string {
  return `<p>Exercise ${escapeHtml(id)} is not among the lesson's exercises.</p>`;
}

function exerciseHtml(asked: Exercise, edition: Edition): string {
  const hints = (asked.hints ?? []).map((hint, k) =>
    `<details><summary>${k === 0 ? "Hint" : "Second hint"}</summary><p>${
      escapeHtml(hint)
    }</p></details>`
  );
  const solution = edition === "instructor" ? solutionHtml(asked) : "";
  return `<div class="exercise"><p><strong>Exercise.</strong> ${escapeHtml(asked.question)}</p>\n${
    hints.join("\n")
  }${solution}</div>`;
}

function solutionHtml({ solution, explanation, slips }: Exercise): string {
  const lines = slips.map(({ hint }) => `<li>${escapeHtml(hint)}</li>`);
  return `\n<div class="solution"><p><strong>Worked solution.</strong> ${
    escapeHtml(solution ?? "There is none.")
  }</p>
<p><strong>With the right answer.</strong> ${escapeHtml(explanation)}</p>
<p><strong>After the usual slips.</strong></p>
<ul>
${lines.join("\n")}
</ul></div>`;
}

/** The name by which a notebook draws its numbers, as its reader wrote it; empty where there is none. */
export function learnerOf({ cells }: Notebook): string {
  for (const cell of cells) {
    const found = cell.cell_type === "code" &&
      /\bconst\s+learner\s*(?::\s*string\s*)?=\s*"([^"\n]*)"/.exec(cell.source);
    if (found) return found[1]!;
  }
  return "";
}
