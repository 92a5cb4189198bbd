/**
 * Parts of a notebook that are not for every reader.
 *
 * @module
 */
import type { Cell, Notebook } from "./notebook.ts";

/** Heading of the part that a learner works through. */
const EXERCISES = "exercises";

/** The notebook without its exercises: the part of that heading, and any exercise elsewhere. */
export function withoutExercises(notebook: Notebook): Notebook {
  let within: number | null = null;
  const cells = notebook.cells.filter((cell) => {
    const heading = headingOf(cell);
    if (heading !== null && (within === null || heading.level <= within)) {
      within = heading.words === EXERCISES ? heading.level : null;
    }
    return within === null && !showsExercise(cell);
  });
  return { ...notebook, cells };
}

function headingOf(cell: Cell): { readonly level: number; readonly words: string } | null {
  if (cell.cell_type !== "markdown") return null;
  const found = /^(#{1,6})\s+(.*?)\s*$/m.exec(cell.source);
  return found === null ? null : { level: found[1]!.length, words: found[2]!.toLowerCase() };
}

function showsExercise(cell: Cell): boolean {
  return cell.cell_type === "code" &&
    cell.outputs.some((output) =>
      "data" in output && String(output.data["text/html"] ?? "").includes('class="exercise"')
    );
}
