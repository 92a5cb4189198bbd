/**
 * Binds pages into a site: contents, cross-references, lists of figures, search. Every page is a file of
 * its own that loads nothing.
 *
 * @module
 */
import { escapeHtml } from "../markdown.ts";
import type { SiteDraft } from "./draft.ts";
import { linkPages, type LostLink } from "./links.ts";
import { contentsList, type OutlinedPage, outlinePage } from "./outline.ts";
import { searchPage } from "./search.ts";
import { framePage, type SiteFile, type SiteFrame } from "./shell.ts";

/** What a site is made of. */
export interface SiteInput extends SiteFrame {
  /** words on the first page, as paragraphs */
  readonly words: readonly string[];
  /** its pages, group by group */
  readonly drafts: readonly SiteDraft[];
  /** pages of another making in the same folder, named in the contents */
  readonly besides?: readonly SiteNeighbour[];
}

/** A page of another making. */
export interface SiteNeighbour {
  /** its file, as a path of the site */
  readonly file: string;
  /** its title */
  readonly title: string;
  /** a sentence on it */
  readonly summary: string;
}

/** A site, and what in it is not as its authors meant it. */
export interface Site {
  /** its files */
  readonly files: readonly SiteFile[];
  /** links that lead nowhere, and formulas that cannot be read */
  readonly faults: readonly string[];
}

/** Makes all files of a site. */
export async function bindSite(input: SiteInput): Promise<Site> {
  const pages = input.drafts.map(outlinePage);
  const lost = linkPages(pages);
  const lessons = pages.map((page, k) =>
    framePage({
      file: page.draft.file,
      title: page.title,
      html: page.body.innerHTML,
      contents: contentsList(page),
      neighbours: neighboursOf(pages, k),
    }, input)
  );
  const own = [contentsPage(input, pages), figuresPage(pages), await searchPage(pages)]
    .map((page) => framePage(page, input));
  return {
    files: [...own, ...lessons],
    faults: [
      ...lost.map(lostWords),
      ...pages.flatMap(({ draft }) =>
        draft.unread.map((formula) => `${draft.source}: the formula "${formula}" cannot be read`)
      ),
    ],
  };
}

function lostWords({ source, address }: LostLink): string {
  return `${source}: the link "${address}" leads nowhere`;
}

function neighboursOf(pages: readonly OutlinedPage[], k: number) {
  return ([["Before", k - 1], ["Next", k + 1]] as const).flatMap(([word, place]) => {
    const page = pages[place];
    return page === undefined ? [] : [[word, page.draft.file, page.title] as const];
  });
}

function contentsPage(
  { name, words, drafts, besides = [] }: SiteInput,
  pages: readonly OutlinedPage[],
) {
  const groups = [...new Set(drafts.map(({ group }) => group))];
  const lists = groups.map((group) => {
    const lines = pages.filter(({ draft }) => draft.group === group).map((page) =>
      `<li><a href="${page.draft.file}">${escapeHtml(page.title)}</a> ${
        escapeHtml(page.summary)
      }</li>`
    );
    return `<h2>${escapeHtml(group)}</h2>\n<ul class="pages">\n${lines.join("\n")}\n</ul>`;
  });
  const others = besides.map(({ file, title, summary }) =>
    `<li><a href="${file}">${escapeHtml(title)}</a> ${escapeHtml(summary)}</li>`
  );
  return {
    file: "index.html",
    title: name,
    html: `<h1>${escapeHtml(name)}</h1>
${words.map((text) => `<p>${escapeHtml(text)}</p>`).join("\n")}
${others.length === 0 ? "" : `<ul class="pages">\n${others.join("\n")}\n</ul>\n`}${
      lists.join("\n")
    }`,
  };
}

function figuresPage(pages: readonly OutlinedPage[]) {
  const lists = pages.filter(({ numbered }) => numbered.length > 0).map((page) => {
    const lines = page.numbered.map(({ id, name }) => {
      const title = page.body.querySelector(`[id="${id}"]`)
        ?.querySelector("figcaption, caption")?.textContent?.trim();
      return `<li><a href="${page.draft.file}#${id}">${escapeHtml(title ?? name)}</a></li>`;
    });
    return `<h2>${escapeHtml(page.title)}</h2>\n<ul>\n${lines.join("\n")}\n</ul>`;
  });
  return {
    file: "figures.html",
    title: "Figures and tables",
    html: `<h1>Figures and tables</h1>\n${lists.join("\n")}`,
  };
}
