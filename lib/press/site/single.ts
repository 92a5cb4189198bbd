/** One page in the style of a site that stands alone: numbered figures and tables, wide ones in frames. @module */
import { cleaned } from "../cells.ts";
import { escapeHtml } from "../markdown.ts";
import { type PageSection, pairs } from "../page.ts";
import { contentsList, outlinePage } from "./outline.ts";
import { framePage } from "./shell.ts";

/** What a page that stands alone shows. */
export interface SinglePage {
  /** its title */
  readonly title: string;
  /** lines below the title: label and value */
  readonly facts: readonly (readonly [string, string])[];
  /** its sections in order; their ids follow from their headings */
  readonly sections: readonly Omit<PageSection, "id">[];
  /** line at its foot */
  readonly foot: string;
}

/** Renders a page that needs no other file and may run nothing. */
export function renderSinglePage({ title, facts, sections, foot }: SinglePage): string {
  const parts = sections.map(({ heading, html }) =>
    `<h3>${escapeHtml(heading)}</h3>\n${cleaned(html)}`
  );
  const html = `<h2>${escapeHtml(title)}</h2>
${pairs(facts, "facts")}
${parts.join("\n")}`;
  const page = outlinePage({ file: "", source: "", group: "", html, unread: [] });
  const framed = {
    file: "",
    title,
    html: page.body.innerHTML,
    contents: contentsList(page),
    alone: true,
  };
  return framePage(framed, { name: title, foot }).content;
}
