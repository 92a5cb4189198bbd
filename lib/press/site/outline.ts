/**
 * A page with its parts named: one title, headings with ids, numbered figures and tables.
 *
 * @module
 */
import { parseHTML } from "linkedom";
import { escapeHtml } from "../markdown.ts";
import { putInFrames } from "../frames.ts";
import { type Numbered, Numbering } from "../numbering.ts";
import type { SiteDraft } from "./draft.ts";
import { highlight } from "./highlight.ts";

/** A heading of a page. */
export interface SiteHeading {
  /** 1 to 6 */
  readonly level: number;
  /** id in the page */
  readonly id: string;
  /** its words */
  readonly text: string;
}

/** A page whose parts have names. */
export interface OutlinedPage {
  readonly draft: SiteDraft;
  /** the first heading's words */
  readonly title: string;
  /** first sentence below the title; empty where there is none */
  readonly summary: string;
  /** headings in order, the title first */
  readonly headings: readonly SiteHeading[];
  /** figures and tables in order */
  readonly numbered: readonly Numbered[];
  /** body of a document that holds the page */
  readonly body: Element;
}

/** Names the parts of a page. */
export function outlinePage(draft: SiteDraft): OutlinedPage {
  const numbering = new Numbering();
  const { html } = numbering.piece(draft.html);
  const body = bodyOf(html);
  const headings = nameHeadings(body);
  for (const code of body.querySelectorAll('pre > code[class^="language-"]')) {
    const language = code.className.slice("language-".length).split(" ")[0]!;
    code.innerHTML = highlight(code.textContent ?? "", language);
  }
  putInFrames(body);
  for (const formula of body.querySelectorAll(".formula")) {
    formula.setAttribute("role", "group");
    formula.setAttribute("tabindex", "0"); // a long one scrolls, with keys too
    formula.setAttribute("aria-label", "Formula");
  }
  return {
    draft,
    title: headings[0]?.text ?? draft.source,
    summary: summaryOf(body),
    headings,
    numbered: numbering.found,
    body,
  };
}

/** A fragment as the body of a document. */
export function bodyOf(html: string): Element {
  const { document } = parseHTML(`<!DOCTYPE html><html><body>${html}</body></html>`);
  return document.body as unknown as Element;
}

/** Lifts headings to where they were written, one title a page, and gives ids as code hosts do. */
function nameHeadings(body: Element): SiteHeading[] {
  const taken = new Set(Array.from(body.querySelectorAll("[id]"), ({ id }) => id));
  const found: SiteHeading[] = [];
  for (const old of body.querySelectorAll("h2, h3, h4, h5, h6")) taken.delete(old.id);
  for (const old of body.querySelectorAll("h2, h3, h4, h5, h6")) {
    const written = Number(old.tagName[1]) - 1;
    const level = found.length === 0 ? 1 : Math.max(2, written);
    const text = old.textContent?.trim() ?? "";
    const id = unused(anchorOf(text), taken);
    const heading = old.ownerDocument.createElement(`h${level}`);
    heading.setAttribute("id", id);
    heading.innerHTML = old.innerHTML;
    old.replaceWith(heading);
    found.push({ level, id, text });
  }
  return found;
}

function unused(id: string, taken: Set<string>): string {
  let free = id;
  for (let copy = 1; taken.has(free); copy++) free = `${id}-${copy}`;
  taken.add(free);
  return free;
}

/** The id that links in the Markdown pages use: small letters, digits and hyphens for blanks. */
export function anchorOf(text: string): string {
  const id = text.toLowerCase().replaceAll(/[^\p{L}\p{N}\s_-]/gu, "").trim().replaceAll(/\s/g, "-");
  return id === "" ? "part" : id;
}

function summaryOf(body: Element): string {
  const paragraph = Array.from(body.querySelectorAll("h1 ~ p, h1 ~ div p"))
    .map((one) => one.textContent?.trim().replaceAll(/\s+/g, " ") ?? "")
    .find((text) => text !== "" && !text.startsWith("Made from"));
  return /^.*?[.?!](?=\s|$)/.exec(paragraph ?? "")?.[0] ?? paragraph ?? "";
}

/** The list of headings, to the level that keeps it short enough to read. */
export function contentsList({ headings }: OutlinedPage, most = 60): string {
  const below = headings.slice(1);
  const deep = below.filter(({ level }) => level <= 3);
  const shown = deep.length > most ? below.filter(({ level }) => level === 2) : deep;
  const lines = shown.map(({ level, id, text }) =>
    `<li class="level-${level}"><a href="#${id}">${escapeHtml(text)}</a></li>`
  );
  return lines.length === 0 ? "" : `<ul>\n${lines.join("\n")}\n</ul>`;
}
