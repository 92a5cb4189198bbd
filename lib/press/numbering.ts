/**
 * Figures and tables of a page numbered in their order, with ids to link to.
 *
 * @module
 */
import { parseHTML } from "linkedom";
import { escapeHtml, slugOf } from "./markdown.ts";

/** A figure or table as a reader names it. */
export interface Numbered {
  /** id in the page, such as "figure-where-the-heat-goes" */
  readonly id: string;
  /** such as "Figure 3" */
  readonly name: string;
}

/** A piece of a page: its HTML, and how much room it takes. */
export interface Piece {
  readonly html: string;
  /** true where it takes the whole width */
  readonly wide: boolean;
}

/** Most columns of a table that stands beside another. */
const NARROW_COLUMNS = 4;

/** Numbers what it is given, in that order. */
export class Numbering {
  readonly #counts = { figure: 0, table: 0 };
  readonly #ids = new Set<string>();
  /** everything numbered so far */
  readonly found: Numbered[] = [];

  /**
   * Numbers the figures and the tables of a fragment; tables folded away behind a picture belong to
   * it and have no number.
   *
   * @param html fragment without scripts
   */
  piece(html: string): Piece {
    const { document } = parseHTML(`<!DOCTYPE html><html><body>${html}</body></html>`);
    const { body } = document;
    for (const figure of body.querySelectorAll("figure")) {
      const title = figure.querySelector("figcaption");
      this.#number("figure", figure as unknown as Element, title as unknown as Element | null);
    }
    const tables = [...body.querySelectorAll("table")].filter((table) =>
      table.closest("details") === null && table.closest("figure") === null
    );
    for (const table of tables) {
      const title = table.querySelector("caption") ??
        table.insertBefore(document.createElement("caption"), table.firstChild);
      this.#number("table", table as unknown as Element, title as unknown as Element);
    }
    const columns = Math.max(
      0,
      ...tables.map((table) => table.querySelectorAll("thead th").length),
    );
    const narrow = tables.length > 0
      ? columns <= NARROW_COLUMNS
      : body.querySelector("figure, ol") !== null;
    return { html: body.innerHTML, wide: body.querySelector(".wide") !== null || !narrow };
  }

  #number(kind: "figure" | "table", element: Element, title: Element | null): void {
    const count = ++this.#counts[kind];
    const name = `${kind === "figure" ? "Figure" : "Table"} ${count}`;
    const words = title?.textContent?.trim() ?? "";
    const plain = `${kind}-${words === "" ? count : slugOf(words)}`;
    const id = this.#ids.has(plain) ? `${plain}-${count}` : plain;
    this.#ids.add(id);
    this.found.push({ id, name });
    element.setAttribute("id", id);
    if (title === null) return;
    const text = `${name}${words === "" ? "" : ". "}${words}`;
    title.innerHTML = kind === "figure" ? `<strong>${escapeHtml(text)}</strong>` : escapeHtml(text);
  }
}

/**
 * Gives links to figures and tables their numbers: a link whose text is "figure" or "table" reads
 * "Figure 3" after that.
 *
 * @param html with links such as `<a href="#figure-where-the-heat-goes">figure</a>`
 * @param numbered what the page holds
 */
export function numberedLinks(html: string, numbered: readonly Numbered[]): string {
  const names = new Map(numbered.map(({ id, name }) => [id, name]));
  return html.replaceAll(
    /<a href="#([\w-]+)">(?:figure|table)<\/a>/gi,
    (link, id: string) => names.has(id) ? `<a href="#${id}">${names.get(id)}</a>` : link,
  );
}
