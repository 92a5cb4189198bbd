/**
 * Links between the pages of a site: to files of the project that have a page, to headings, figures and
 * tables, and to the sources that a text cites by their key.
 *
 * @module
 */
import { posix } from "node:path";
import { numberedLinks } from "../numbering.ts";
import type { OutlinedPage } from "./outline.ts";

/** A link that leads nowhere. */
export interface LostLink {
  /** file it stands in */
  readonly source: string;
  /** as written */
  readonly address: string;
}

/** What links may lead to. */
interface Targets {
  /** pages by the file they are made from */
  readonly bySource: ReadonlyMap<string, OutlinedPage>;
  /** ids of each page */
  readonly ids: ReadonlyMap<OutlinedPage, ReadonlySet<string>>;
  /** page with the sources that keys in square brackets name */
  readonly sources: OutlinedPage | undefined;
}

/** File whose headings are the keys of the sources. */
const SOURCES = "docs/sources.md";

/** Sets the links of all pages; gives those that lead nowhere, which stand as plain words. */
export function linkPages(pages: readonly OutlinedPage[]): LostLink[] {
  const bySource = new Map(pages.map((page) => [page.draft.source, page]));
  const targets: Targets = {
    bySource,
    ids: new Map(
      pages.map((page) =>
        [page, new Set(Array.from(page.body.querySelectorAll("[id]"), ({ id }) => id))] as const
      ),
    ),
    sources: bySource.get(SOURCES),
  };
  return pages.flatMap((page) => linkPage(page, targets));
}

function linkPage(page: OutlinedPage, targets: Targets): LostLink[] {
  const { body, draft } = page;
  body.innerHTML = numberedLinks(body.innerHTML, page.numbered);
  const lost: LostLink[] = [];
  for (const link of body.querySelectorAll("a[href]")) {
    const address = link.getAttribute("href")!;
    if (/^(?:https?|mailto):/.test(address)) continue;
    const found = resolved(address, page, targets);
    if (found === undefined) {
      lost.push({ source: draft.source, address });
    }
    if (found === undefined || found === null) link.replaceWith(...link.childNodes);
    else {
      link.setAttribute("href", found);
      nameElsewhere(link, found, targets);
    }
  }
  for (const code of body.querySelectorAll(":not(pre) > code")) linkFileName(code, page, targets);
  if (targets.sources !== undefined && targets.sources !== page) citeIn(page, targets);
  return lost;
}

/** Where an address leads; null for a file that has no page, undefined where it leads nowhere. */
function resolved(
  address: string,
  page: OutlinedPage,
  { bySource, ids }: Targets,
): string | null | undefined {
  const [path = "", fragment = ""] = decodeURI(address).split("#");
  const folder = posix.dirname(page.draft.source);
  const target = path === "" ? page : bySource.get(posix.normalize(posix.join(folder, path)));
  if (target === undefined) return path.endsWith(".md") && folder === "docs" ? undefined : null;
  if (fragment !== "" && !ids.get(target)!.has(fragment)) return undefined;
  const place = fragment === "" ? "" : `#${fragment}`;
  return target === page ? place || page.draft.file : `${target.draft.file}${place}`;
}

/** "figure" or "table" of another page reads "Figure 3 of Soil": numbers count by page. */
function nameElsewhere(link: Element, address: string, { bySource }: Targets): void {
  if (!/^(?:figure|table)$/i.test(link.textContent?.trim() ?? "")) return;
  const [file, fragment] = address.split("#");
  const page = [...bySource.values()].find(({ draft }) => draft.file === file);
  const name = page?.numbered.find(({ id }) => id === fragment)?.name;
  if (page !== undefined && name !== undefined) link.textContent = `${name} of ${page.title}`;
}

/** Makes `docs/soil.md` in a text a link to its page. */
function linkFileName(code: Element, page: OutlinedPage, { bySource }: Targets): void {
  const target = bySource.get(code.textContent ?? "");
  if (target === undefined || target === page || code.closest("a") !== null) return;
  const link = code.ownerDocument.createElement("a");
  link.setAttribute("href", target.draft.file);
  code.replaceWith(link);
  link.append(code);
}

/** Makes keys in square brackets links to their sources. */
function citeIn({ body }: OutlinedPage, { sources, ids }: Targets): void {
  const known = ids.get(sources!)!;
  const document = body.ownerDocument;
  for (const element of body.querySelectorAll("p, li, td, dd, figcaption, div")) {
    for (const node of [...element.childNodes]) {
      if (node.nodeType !== 3 || element.closest("a, pre, code") !== null) continue;
      const parts = (node.textContent ?? "").split(/\[([a-z0-9-]+)\]/);
      if (!parts.some((part, k) => k % 2 === 1 && known.has(part))) continue;
      const pieces = parts.map((part, k) => {
        if (k % 2 === 0) return document.createTextNode(part);
        if (!known.has(part)) return document.createTextNode(`[${part}]`);
        const link = document.createElement("a");
        link.setAttribute("href", `${sources!.draft.file}#${part}`);
        link.textContent = `[${part}]`;
        return link;
      });
      (node as ChildNode).replaceWith(...pieces);
    }
  }
}
