/**
 * The frame around each page of a site: what the page may do, where the reader is, where to go on.
 *
 * @module
 */
import { inert } from "../../basics/mod.ts";
import { documentStart } from "../document.ts";
import { escapeHtml } from "../markdown.ts";
import base from "../base.css" with { type: "text" };
import frames from "../frames.css" with { type: "text" };
import own from "./site.css" with { type: "text" };

/** A file of a site. */
export interface SiteFile {
  /** path below the folder of the site */
  readonly path: string;
  /** what it holds */
  readonly content: string;
}

/** A page as its frame needs it. */
export interface FramedPage {
  /** file of the page */
  readonly file: string;
  /** title of the page */
  readonly title: string;
  /** what is in its `main` */
  readonly html: string;
  /** list of its headings; empty for none */
  readonly contents?: string;
  /** pages before and after: file and title */
  readonly neighbours?: readonly (readonly [word: string, file: string, title: string])[];
  /** program of the page, to the byte */
  readonly script?: string;
  /** true for a page without a site around it */
  readonly alone?: boolean;
}

/** What stands on every page. */
export interface SiteFrame {
  /** name of the site */
  readonly name: string;
  /** line at the foot: edition, and where the numbers come from */
  readonly foot: string;
}

/** Pages that every page links to. */
const ALWAYS = [
  ["index.html", "Contents"],
  ["figures.html", "Figures and tables"],
  ["search.html", "Search"],
] as const;

/** A page that needs no other file; without a program it may run nothing. */
export function framePage(page: FramedPage, { name, foot }: SiteFrame): SiteFile {
  const { file, contents = "", script, alone = false } = page;
  const title = page.title === name ? name : `${page.title} · ${name}`;
  const links = ALWAYS.map(([target, word]) =>
    `<li><a href="${target}"${target === file ? ' aria-current="page"' : ""}>${word}</a></li>`
  );
  const neighbours = (page.neighbours ?? []).map(([word, target, title]) =>
    `<li>${word}: <a href="${target}">${escapeHtml(title)}</a></li>`
  );
  const head = `<header class="head">
<p class="site">${escapeHtml(name)}</p>
<nav aria-label="Site">
<ul>
${links.join("\n")}
</ul>
</nav>
</header>
`;
  const program = script === undefined ? "" : `<script>${script}</script>\n`;
  const html = inert(
    `${documentStart({ title, style: base + frames + own, script })}${alone ? "" : head}${
      contents === "" ? "" : `<nav class="contents" aria-label="On this page">
<h2>On this page</h2>
${contents}
</nav>
`
    }<main id="content" tabindex="-1">
${page.html}
</main>
<footer class="foot">
${
      neighbours.length === 0
        ? ""
        : `<nav aria-label="Before and after"><ul>\n${neighbours.join("\n")}\n</ul></nav>\n`
    }<p>${escapeHtml(foot)}</p>
</footer>
`,
  );
  return { path: file, content: `${html}${program}</body>\n</html>\n` };
}
