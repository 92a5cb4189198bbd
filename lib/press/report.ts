/**
 * The report: one executed notebook as a page for a client. No code; figures and tables numbered; the
 * answer on the first printed page.
 *
 * @module
 */
import { inert } from "../basics/mod.ts";
import { cleaned, renderOutput } from "./cells.ts";
import { documentStart } from "./document.ts";
import { escapeHtml, type Heading, markdownRenderer } from "./markdown.ts";
import type { Notebook } from "./notebook.ts";
import { numberedLinks, Numbering } from "./numbering.ts";
import { type PageChanges, pairs, renderChanges } from "./page.ts";
import base from "./base.css" with { type: "text" };
import frames from "./frames.css" with { type: "text" };
import own from "./report.css" with { type: "text" };

/** What the report is made of. */
export interface ReportInput {
  /** heading of the page */
  readonly title: string;
  /** who, where, when: one line below the heading */
  readonly facts: readonly string[];
  /** the executed notebook; its second-level headings are the sections, the first is page one */
  readonly notebook: Notebook;
  /** what changed since an earlier run */
  readonly changes?: PageChanges;
  /** where the numbers come from: label and value */
  readonly provenance: readonly (readonly [string, string])[];
  /** file of the workbook beside the report; none unless given */
  readonly workbook?: string;
  /** what it is printed on; as the printer has it unless given */
  readonly paper?: "A4" | "Letter";
  /** file of the page for whoever checks the study; none unless given */
  readonly checks?: string;
}

/** A section under way. */
interface Section {
  readonly id: string;
  /** as HTML */
  readonly heading: string;
  readonly parts: string[];
}

/** Renders the report as one HTML page that needs no other file and no script. */
export function renderReport(input: ReportInput): string {
  const title = escapeHtml(input.title);
  const numbering = new Numbering();
  const sections = sectionsOf(input.notebook, numbering);
  const [first, ...others] = sections.map((section) => ({
    ...section,
    parts: section.parts.map((part) => numberedLinks(part, numbering.found)),
  }));
  const chapters = others.map((section, place) => chapter(section, place + 1));
  const paper = input.paper === undefined ? "" : `@page { size: ${input.paper}; }\n`;
  const entries = [
    ...others.map(({ id, heading }) => [id, heading] as const),
    ...(input.changes === undefined
      ? []
      : [["changes", escapeHtml(input.changes.heading)] as const]),
    ["provenance", "Where these numbers come from"] as const,
  ];
  return inert(
    `${
      documentStart({ title: input.title, style: base + frames + own + paper })
    }<header class="head">
<h1>${title}</h1>
<p class="facts">${input.facts.map(escapeHtml).join(" · ")}</p>
</header>
<main id="content">
${first === undefined ? "" : chapter(first, 0)}
<nav class="contents" aria-label="Contents">
<h2>Contents</h2>
<ol>
${entries.map(([id, heading]) => `<li><a href="#${id}">${heading}</a></li>`).join("\n")}
</ol>
${workbookLink(input.workbook)}${checksLink(input.checks)}</nav>
${chapters.join("\n")}
${renderChanges(input.changes)}<section class="chapter" aria-labelledby="provenance">
<h2 id="provenance">${others.length + 1}. Where these numbers come from</h2>
${checksLink(input.checks)}${pairs(input.provenance, "provenance")}
</section>
</main>
</body>
</html>
`,
  );
}

function workbookLink(file: string | undefined): string {
  if (file === undefined) return "";
  return `<p>How each number came about, cell by cell: <a href="${
    escapeHtml(encodeURI(file))
  }">the workbook</a>.</p>\n`;
}

function checksLink(file: string | undefined): string {
  if (file === undefined) return "";
  return `<p>What moves when it is computed more finely, and what else was checked: <a href="${
    escapeHtml(encodeURI(file))
  }">the page of doubt</a>.</p>\n`;
}

/** A section; the first has no number, because it is the report for those who read no further. */
function chapter({ id, heading, parts }: Section, number: number): string {
  const name = number === 0 ? heading : `${number}. ${heading}`;
  return `<section class="${number === 0 ? "chapter first" : "chapter"}" aria-labelledby="${id}">
<h2 id="${id}">${name}</h2>
${parts.join("\n")}
</section>`;
}

/** Drawings that move sideways can be reached, and moved, without a mouse. */
function reachable(html: string): string {
  return html.replaceAll(
    '<div class="wide drawing">',
    '<div class="wide drawing" tabindex="0" role="group" aria-label="Drawing; moves sideways">',
  );
}

/** A unit such as W/(m² K) stays on one line. */
function withWholeUnits(html: string): string {
  return html.replace(
    /(?<=[\p{L}²³]\/)\([^()<>"]{3,20}\)/gu,
    (unit) => unit.replaceAll(" ", "&#160;"),
  );
}

/** Sections at the second-level headings; what stands above the first of them is for the notebook. */
function sectionsOf(notebook: Notebook, numbering: Numbering): Section[] {
  const sections: Section[] = [];
  let met: Heading[] = [];
  const markdown = markdownRenderer("report", (heading) => met.push(heading), () => {}, 0);
  for (const cell of notebook.cells) {
    if (cell.cell_type === "raw") continue;
    if (cell.cell_type === "code") {
      const pieces = cell.outputs.map((output) => numbering.piece(renderOutput(output, markdown)));
      const html = pieces.map(({ html, wide }) =>
        `<div class="piece${wide ? " wide" : ""}">${reachable(withWholeUnits(html))}</div>`
      );
      if (html.length > 0) {
        sections.at(-1)?.parts.push(`<div class="pieces">\n${html.join("\n")}\n</div>`);
      }
      continue;
    }
    met = [];
    const html = cleaned(markdown(cell.source), true);
    const start = met.find(({ level }) => level === 2);
    if (start !== undefined) sections.push({ id: start.id, heading: start.html, parts: [] });
    const words = html.replace(/<h2\b[^>]*>.*?<\/h2>\n?/s, "").trim();
    if (words !== "") sections.at(-1)?.parts.push(`<div class="text">\n${words}\n</div>`);
  }
  return sections;
}
