/**
 * A page of headings and blocks that need no notebook, in the style of the report.
 *
 * @module
 */
import { inert } from "../basics/mod.ts";
import { cleanHtml } from "./clean_html.ts";
import { escapeHtml } from "./markdown.ts";
import { policyElement } from "./policy.ts";
import style from "./report.css" with { type: "text" };

/** A section of a page. */
export interface PageSection {
  /** its heading */
  readonly heading: string;
  /** start of its link */
  readonly id: string;
  /** HTML of our own display functions */
  readonly html: string;
}

/** Renders a page that needs no other file and no script, and may load none. */
export function renderPage(
  title: string,
  facts: readonly (readonly [string, string])[],
  sections: readonly PageSection[],
): string {
  const heading = escapeHtml(title);
  const sheet = `\n${style}`;
  const pairs = facts.map(([label, value]) =>
    `<div><dt>${escapeHtml(label)}</dt><dd>${escapeHtml(value)}</dd></div>`
  );
  return inert(`<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
${policyElement(sheet)}
<title>${heading}</title>
<style>${sheet}</style>
</head>
<body>
<a class="skip" href="#content">Skip to content</a>
<header class="head">
<h1>${heading}</h1>
<dl class="facts">
${pairs.join("\n")}
</dl>
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
${
    sections.map(({ heading, id, html }) =>
      `<section class="chapter" aria-labelledby="${id}">\n<h2 id="${id}">${
        escapeHtml(heading)
      }</h2>\n${cleanHtml(html).html}\n</section>`
    ).join("\n")
  }
</main>
</body>
</html>
`);
}
