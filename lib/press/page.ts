/**
 * A page of headings and blocks that need no notebook, in the style of the report.
 *
 * @module
 */
import { inert } from "../basics/mod.ts";
import { cleanHtml } from "./clean_html.ts";
import { documentStart } from "./document.ts";
import { inFrames } from "./frames.ts";
import { escapeHtml } from "./markdown.ts";
import base from "./base.css" with { type: "text" };
import frames from "./frames.css" with { type: "text" };
import own from "./workbook.css" with { type: "text" };

/** A section of a page. */
export interface PageSection {
  /** its heading */
  readonly heading: string;
  /** start of its link */
  readonly id: string;
  /** HTML of our own display functions */
  readonly html: string;
}

/** What changed since an earlier run. */
export interface PageChanges {
  /** its heading */
  readonly heading: string;
  /** figures, inputs, notices */
  readonly sections: readonly PageSection[];
}

/** Renders a page that needs no other file and no script, and may load none. */
export function renderPage(
  title: string,
  facts: readonly (readonly [string, string])[],
  sections: readonly PageSection[],
): string {
  const heading = escapeHtml(title);
  return inert(`${documentStart({ title, style: base + frames + own })}<header class="head">
<h1>${heading}</h1>
${pairs(facts, "facts")}
</header>
<nav class="contents" aria-label="Contents">
<h2>Contents</h2>
<ol>
${
    sections.map(({ heading, id }) => `<li><a href="#${id}">${escapeHtml(heading)}</a></li>`).join(
      "\n",
    )
  }
</ol>
</nav>
<main id="content">
${sections.map((section) => pageSection(section, "chapter")).join("\n")}
</main>
</body>
</html>
`);
}

/** A section with its heading. */
export function pageSection({ heading, id, html }: PageSection, name: string): string {
  return `<section class="${name}" aria-labelledby="${id}">
<h2 id="${id}">${escapeHtml(heading)}</h2>
${inFrames(cleanHtml(html).html, heading)}
</section>`;
}

/** The part that says what changed; nothing where nothing is compared. */
export function renderChanges(changes: PageChanges | undefined): string {
  if (changes === undefined) return "";
  const parts = changes.sections.map(({ heading, id, html }) =>
    `<h3 id="changes-${id}">${escapeHtml(heading)}</h3>\n${inFrames(cleanHtml(html).html, heading)}`
  );
  return `<section class="chapter" aria-labelledby="changes">
<h2 id="changes">${escapeHtml(changes.heading)}</h2>
${parts.join("\n")}
</section>
`;
}

/** Labels and values below each other. */
export function pairs(rows: readonly (readonly [string, string])[], name: string): string {
  const lines = rows.map(([label, value]) =>
    `<div><dt>${escapeHtml(label)}</dt><dd>${escapeHtml(value)}</dd></div>`
  );
  return `<dl class="${name}">\n${lines.join("\n")}\n</dl>`;
}
