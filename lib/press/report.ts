/**
 * The report: executed notebooks on one self-contained HTML page.
 *
 * @module
 */
import { inert } from "../basics/mod.ts";
import { cleanHtml } from "./clean_html.ts";
import { escapeHtml, type Heading, markdownRenderer } from "./markdown.ts";
import type { CodeCell, MediaBundle, Notebook, Output } from "./notebook.ts";
import type { PageSection } from "./page.ts";
import { policyElement } from "./policy.ts";
import style from "./report.css" with { type: "text" };

/** A message shown at the top of the report. */
export interface ReportNotice {
  /** how much it matters, such as "caution" */
  readonly level: string;
  /** what it is about */
  readonly about: string;
  /** the message */
  readonly text: string;
}

/** One executed notebook. */
export interface ReportSection {
  /** name without ending, such as "03-house"; start of the section's ids */
  readonly name: string;
  /** the notebook */
  readonly notebook: Notebook;
}

/** Everything the report shows. */
export interface ReportInput {
  /** heading of the page */
  readonly title: string;
  /** lines below the heading: label and value */
  readonly facts: readonly (readonly [string, string])[];
  /** messages shown before the first section */
  readonly notices: readonly ReportNotice[];
  /** the notebooks in order */
  readonly sections: readonly ReportSection[];
  /** what changed since an earlier run, below the notebooks */
  readonly changes?: { readonly heading: string; readonly sections: readonly PageSection[] };
  /** where the numbers come from: label and value */
  readonly provenance: readonly (readonly [string, string])[];
}

/** Renders the report as one HTML page that needs no other file and no script. */
export function renderReport(input: ReportInput): string {
  const sections = input.sections.map(renderSection);
  const notices = [...input.notices, ...sections.flatMap(({ unread }) => unread)];
  const title = escapeHtml(input.title);
  return inert(`<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
${policyElement(`\n${style}`)}
<title>${title}</title>
<style>
${style}</style>
</head>
<body>
<a class="skip" href="#content">Skip to content</a>
<header class="head">
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
`);
}

function renderChanges(changes: ReportInput["changes"]): string {
  if (changes === undefined) return "";
  const parts = changes.sections.map(({ heading, id, html }) =>
    `<h3 id="changes-${id}">${escapeHtml(heading)}</h3>\n${cleanHtml(html).html}`
  );
  return `<section class="chapter" aria-labelledby="changes">
<h2 id="changes">${escapeHtml(changes.heading)}</h2>
${parts.join("\n")}
</section>
`;
}

function pairs(rows: readonly (readonly [string, string])[], name: string): string {
  const lines = rows.map(([label, value]) =>
    `<div><dt>${escapeHtml(label)}</dt><dd>${escapeHtml(value)}</dd></div>`
  );
  return `<dl class="${name}">\n${lines.join("\n")}\n</dl>`;
}

/** Messages in the order caution, warning, then the rest. */
function renderNotices(notices: readonly ReportNotice[]): string {
  if (notices.length === 0) return "";
  const rank = (notice: ReportNotice): number => {
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
  readonly unread: readonly ReportNotice[];
}

function renderSection(section: ReportSection): RenderedSection {
  const headings: Heading[] = [];
  const unread: ReportNotice[] = [];
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
    if (cell.cell_type === "code") return renderCode(cell, markdown);
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

function renderCode(cell: CodeCell, markdown: (text: string) => string): string {
  const number = cell.execution_count ?? "not run";
  return `<details class="code"><summary>Code ${number}</summary>
<pre><code>${escapeHtml(cell.source)}</code></pre></details>
${cell.outputs.map((output) => renderOutput(output, markdown)).join("\n")}`;
}

function renderOutput(output: Output, markdown: (text: string) => string): string {
  switch (output.output_type) {
    case "stream":
      return `<pre class="output ${escapeHtml(output.name)}">${escapeHtml(output.text)}</pre>`;
    case "error":
      return `<pre class="output error">${escapeHtml(`${output.ename}: ${output.evalue}`)}</pre>`;
    default:
      return `<div class="output">${renderBundle(output.data, markdown)}</div>`;
  }
}

/** The richest form this page can hold. */
function renderBundle(data: MediaBundle, markdown: (text: string) => string): string {
  const text = (type: string): string | undefined =>
    typeof data[type] === "string" ? data[type] : undefined;
  const plain = text("text/plain") ?? "";
  const html = text("text/html");
  if (html !== undefined) return cleaned(html);
  const svg = text("image/svg+xml");
  if (svg !== undefined) {
    const bytes = Array.from(new TextEncoder().encode(svg), (byte) => String.fromCharCode(byte));
    return picture("image/svg+xml", btoa(bytes.join("")), plain);
  }
  for (const type of ["image/png", "image/jpeg"]) {
    const content = text(type);
    const base64 = content?.replaceAll(/\s/g, "");
    if (base64 !== undefined && BASE64.test(base64)) return picture(type, base64, plain);
  }
  const source = text("text/markdown");
  if (source !== undefined) return cleaned(markdown(source));
  return `<pre>${escapeHtml(plain)}</pre>`;
}

/** What may stand in the page, and a word where that is not all. */
function cleaned(source: string, ids = false): string {
  const { html, cut } = cleanHtml(source, ids);
  return cut ? `${html}\n<p class="note">${LEFT_OUT}</p>` : html;
}

const LEFT_OUT =
  "Something was left out here: a report holds words, tables, formulas and embedded pictures, but no " +
  "scripts, frames, forms or files from elsewhere.";

const BASE64 = /^[A-Za-z0-9+/=]*$/;

function picture(type: string, base64: string, alt: string): string {
  return `<img alt="${escapeHtml(alt)}" src="data:${type};base64,${base64}">`;
}
