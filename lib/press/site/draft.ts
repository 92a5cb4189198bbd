/**
 * Pages of a site as they are written down: a text page from Markdown, a lesson from an executed
 * notebook. Links, numbers and search come when the pages are bound.
 *
 * @module
 */
import { cleaned, renderOutput } from "../cells.ts";
import { escapeHtml, markdownRenderer } from "../markdown.ts";
import type { CodeCell, Notebook } from "../notebook.ts";
import { highlight } from "./highlight.ts";

/** A page before it is bound into a site. */
export interface SiteDraft {
  /** name of its file in the site, such as "soil.html" */
  readonly file: string;
  /** the file it is made from, as a path of the project, such as "docs/soil.md"; links to it lead here */
  readonly source: string;
  /** heading under which the contents list it */
  readonly group: string;
  /** what it holds: HTML that can do nothing but be seen; its headings one level too deep */
  readonly html: string;
  /** formulas that cannot be read and stand as written */
  readonly unread: readonly string[];
}

/** What stands in place of a cell that asks a learner something. */
export type ExerciseCell = (cell: CodeCell) => string | null;

type Made = Pick<SiteDraft, "html" | "unread">;

/** The body of a text page. */
export function documentBody(markdown: string): Made {
  const unread: string[] = [];
  const render = markdownRenderer("page", () => {}, ({ formula }) => unread.push(formula));
  return { html: cleaned(render(markdown), true), unread };
}

/**
 * The body of a lesson: texts as they are, code folded away, outputs.
 *
 * @param notebook executed
 * @param exercise gives what is shown for a cell with an exercise, its code and outputs left out; null
 * for every other cell
 */
export function lessonBody(notebook: Notebook, exercise: ExerciseCell): Made {
  const unread: string[] = [];
  const render = markdownRenderer("page", () => {}, ({ formula }) => unread.push(formula));
  const cells = notebook.cells.map((cell) => {
    if (cell.cell_type === "code") return exercise(cell) ?? codeCell(cell, render);
    if (cell.cell_type === "raw") return `<pre>${escapeHtml(cell.source)}</pre>`;
    return `<div class="text">\n${cleaned(render(cell.source), true)}</div>`;
  });
  return { html: cells.join("\n"), unread };
}

function codeCell(cell: CodeCell, render: (text: string) => string): string {
  const number = cell.execution_count ?? "not run";
  const outputs = cell.outputs.map((output) => renderOutput(output, render));
  return `<details class="code"><summary>Code ${number}</summary>
<pre><code>${highlight(cell.source, "ts")}</code></pre></details>
${outputs.join("\n")}`;
}
