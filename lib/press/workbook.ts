/**
 * The workbook: executed notebooks on one self-contained HTML page, with their code.
 *
 * @module
 */
import { inert } from "../basics/mod.ts";
import { cleaned, renderCode } from "./cells.ts";
import { cleanHtml } from "./clean_html.ts";
import { documentStart } from "./document.ts";
import { inFrames } from "./frames.ts";
import { escapeHtml, type Heading, markdownRenderer } from "./markdown.ts";
import { withoutExercises } from "./leave_out.ts";
import type { Notebook } from "./notebook.ts";
import { type PageChanges, pairs, renderChanges } from "./page.ts";
import base from "./base.css" with { type: "text" };
import frames from "./frames.css" with { type: "text" };
import own from "./workbook.css" with { type: "text" };

/** A message shown at the top of the workbook. */
export interface PageNotice {
  /** how much it matters, such as "caution" */
  readonly level: string;
  /** what it is about */
  readonly about: string;
  /** the message */
  readonly text: string;
}

/** One executed notebook. */
export interface NotebookSection {
  /** name without ending, such as "03-house"; start of the section's ids */
  readonly name: string;
  /** the notebook */
  readonly notebook: Notebook;
}

/** Everything the workbook shows. */
export interface WorkbookInput {
  /** heading of the page */
  readonly title: string;
  /** lines below the heading: label and value */
  readonly facts: readonly (readonly [string, string])[];
  /** messages shown before the first section */
  readonly notices: readonly PageNotice[];
  /** the notebooks in order */
  readonly sections: readonly NotebookSection[];
  /** true where learners are to work through it; else the exercises are left out */
  readonly exercises?: boolean;
  /** what changed since an earlier run, below the notebooks */
  readonly changes?: PageChanges;
  /** where the numbers come from: label and value */
  readonly provenance: readonly (readonly [string, string])[];
}

/** Renders the workbook as one HTML page that needs no other file and no script. */
export function renderWorkbook(input: WorkbookInput): string {
  const shown = input.exercises === true ? input.sections : input.sections.map((section) => ({
    ...section,
    notebook: withoutExercises(section.notebook),
  }));
  const sections = shown.map(renderSection);
  const notices = [...input.notices, ...sections.flatMap(({ unread }) => unread)];
  const title = escapeHtml(input.title);
  return inert(
    `${documentStart({ title: input.title, style: base + frames + own })}<header class="head">
<h1>${title}</h1>
${pairs(input.facts, "facts")}
</header>
<nav class="contents" aria-label="Contents">
<h2>Contents</h2>
<ol>
${sections.map((section) => section.contents).join("\n")}
${
      input.changes === undefined
        ? ""
        : `<li><a href="#changes">${escapeHtml(input.changes.heading)}</a></li>\n`
    }<li><a href="#provenance">Where these numbers come from</a></li>
</ol>
</nav>
<main id="content">
${renderNotices(notices)}
${sections.map((section) => section.html).join("\n")}
${renderChanges(input.changes)}<section class="chapter" aria-labelledby="provenance">
<h2 id="provenance">Where these numbers come from</h2>
${pairs(input.provenance, "provenance")}
</section>
</main>
</body>
</html>
`,
  );
}

/** Messages in the order caution, warning, then the rest. */
function renderNotices(notices: readonly PageNotice[]): string {
  if (notices.length === 0) return "";
  const rank = (notice: PageNotice): number => {
    const place = ["caution", "warning"].indexOf(notice.level);
    return place < 0 ? 2 : place;
  };
  const sorted = [...notices].sort((a, b) => rank(a) - rank(b));
  const lines = sorted.map((notice) =>
    `<li class="${escapeHtml(notice.level)}"><strong>${
      escapeHtml(capital(notice.level))
    }</strong> ` +
    `<span class="about">${escapeHtml(notice.about)}</span> ${escapeHtml(notice.text)}</li>`
  );
  return `<section class="notices" aria-labelledby="notices">
<h2 id="notices">Read this first</h2>
<ul>
${lines.join("\n")}
</ul>
</section>`;
}

function capital(word: string): string {
  return word.slice(0, 1).toUpperCase() + word.slice(1);
}

interface RenderedSection {
  readonly html: string;
  readonly contents: string;
  /** formulas that stand in it as they were written */
  readonly unread: readonly PageNotice[];
}

function renderSection(section: NotebookSection): RenderedSection {
  const headings: Heading[] = [];
  const unread: PageNotice[] = [];
  const markdown = markdownRenderer(
    section.name,
    (heading) => headings.push(heading),
    ({ formula, why }) =>
      unread.push({
        level: "warning",
        about: section.name,
        text: `The formula "${shortened(formula)}" cannot be read and is shown as written: ${
          shortened(why)
        }`,
      }),
  );
  const cells = section.notebook.cells.map((cell) => {
    if (cell.cell_type === "code") return inFrames(renderCode(cell, markdown), "Table");
    if (cell.cell_type === "raw") return `<pre>${escapeHtml(cell.source)}</pre>`;
    return `<div class="text">\n${cleaned(markdown(cell.source), true)}</div>`;
  });
  const first = headings[0]?.level === 2 ? headings[0] : undefined;
  const id = first?.id ?? escapeHtml(section.name);
  const start = first === undefined ? `<h2 id="${id}">${escapeHtml(section.name)}</h2>\n` : "";
  const html = `<section class="chapter" aria-labelledby="${id}">\n${start}${
    cells.join("\n")
  }\n</section>`;
  const parts = headings.filter((heading) => heading.level === 3)
    .map((heading) => `<li><a href="#${heading.id}">${cleanHtml(heading.html).html}</a></li>`);
  const below = parts.length === 0 ? "" : `\n<ul>\n${parts.join("\n")}\n</ul>`;
  const name = first === undefined ? escapeHtml(section.name) : cleanHtml(first.html).html;
  return { html, contents: `<li><a href="#${id}">${name}</a>${below}</li>`, unread };
}

/** A formula that cannot be read may be as long as the cell. */
function shortened(text: string): string {
  return text.length > 200 ? `${text.slice(0, 200)}…` : text;
}
