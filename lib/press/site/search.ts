/**
 * Search in the reader's browser: an index made with the pages, and a page with the program that reads
 * it. Nothing is fetched, so it works from a disk too.
 *
 * @module
 */
import MiniSearch, { type Options } from "minisearch";
import { fileURLToPath } from "node:url";
import { escapeHtml } from "../markdown.ts";
import type { OutlinedPage } from "./outline.ts";
import type { FramedPage } from "./shell.ts";

/** A place that can be found. */
interface Place {
  readonly id: number;
  /** file and id */
  readonly link: string;
  /** heading */
  readonly heading: string;
  /** title of the page */
  readonly page: string;
  /** words below the heading */
  readonly text: string;
  /** their beginning */
  readonly start: string;
}

/** A found place as the page shows it. */
type Found = Pick<Place, "link" | "heading" | "page" | "start">;

/** Characters of a place that are shown. */
const SHOWN = 160;
/** Places shown at most. */
const MOST_FOUND = 50;

const OPTIONS: Options<Place> = {
  fields: ["heading", "page", "text"],
  storeFields: ["link", "heading", "page", "start"],
  processTerm: foldTerm,
};

/** A word as it is looked up: small letters without accents. */
export function foldTerm(term: string): string {
  return term.normalize("NFKD").replace(/\p{M}/gu, "").toLowerCase();
}

/** The index of all pages, as text. */
export function searchIndex(pages: readonly OutlinedPage[]): string {
  const index = new MiniSearch<Place>(OPTIONS);
  index.addAll(pages.flatMap(placesOf).map((place, id) => ({ id, ...place })));
  return JSON.stringify(index);
}

/** The words of a page by the heading they stand under. */
function placesOf({ draft, title, body }: OutlinedPage): Omit<Place, "id">[] {
  const places: { link: string; heading: string; words: string[] }[] = [
    { link: draft.file, heading: title, words: [] },
  ];
  const walk = (element: Element): void => {
    for (const node of element.childNodes) {
      if (node.nodeType === 3) places.at(-1)!.words.push(node.textContent ?? "");
      if (node.nodeType !== 1) continue;
      const child = node as Element;
      const level = /^H([1-4])$/.exec(child.tagName)?.[1];
      if (level === "1") continue;
      if (level !== undefined) {
        const heading = child.textContent?.trim() ?? "";
        places.push({ link: `${draft.file}#${child.id}`, heading, words: [] });
        continue;
      }
      if (child.tagName === "ANNOTATION") continue; // the formula once more, as it was typed
      if (child.tagName === "IMG") places.at(-1)!.words.push(child.getAttribute("alt") ?? "");
      else walk(child);
      places.at(-1)!.words.push(" ");
    }
  };
  walk(body);
  return places.map(({ link, heading, words }) => {
    const text = words.join("").replaceAll(/\s+/g, " ").trim();
    const start = text.length > SHOWN ? `${text.slice(0, SHOWN)}…` : text;
    return { link, heading, page: title, text, start };
  });
}

/** What the browser is given of the package. */
interface SearchLibrary {
  loadJSON(json: string, options: unknown): {
    search(words: string, options: unknown): readonly Found[];
  };
}

/**
 * The program of the page; written into it as text, so it may use its arguments and the page alone.
 *
 * @param library the package
 * @param fold how words are looked up
 * @param fields which parts of a place are searched, and most places shown
 */
function runSearch(
  library: SearchLibrary,
  fold: (term: string) => string,
  { fields, storeFields, most }: {
    readonly fields: readonly string[];
    readonly storeFields: readonly string[];
    readonly most: number;
  },
): void {
  const part = (id: string) => document.getElementById(id)!;
  const box = part("words") as HTMLInputElement;
  const options = { fields, storeFields, processTerm: fold };
  const index = library.loadJSON(part("index").textContent ?? "{}", options);
  const say = (text: string) => {
    part("count").textContent = text;
  };
  const item = ({ link, heading, page, start }: Found) => {
    const line = document.createElement("li");
    const anchor = document.createElement("a");
    anchor.href = link;
    anchor.textContent = heading;
    const words = document.createElement("span");
    words.textContent = ` ${page === heading ? "" : `(${page}) `}${start}`;
    line.append(anchor, words);
    return line;
  };
  const look = () => {
    const words = box.value.trim();
    const search = {
      prefix: true,
      fuzzy: 0.15,
      combineWith: "AND",
      boost: { heading: 4, page: 2 },
    };
    const found = words === "" ? [] : index.search(words, search);
    part("found").replaceChildren(...found.slice(0, most).map(item));
    const more = found.length > most ? `, the best ${most} are shown` : "";
    say(
      words === ""
        ? ""
        : found.length === 0
        ? `Nothing found for ${words}`
        : `${found.length} ${found.length === 1 ? "place" : "places"} found${more}`,
    );
    history.replaceState(null, "", words === "" ? "#" : `#${encodeURIComponent(words)}`);
  };
  let waiting: ReturnType<typeof setTimeout> | undefined;
  box.addEventListener("input", () => {
    clearTimeout(waiting);
    waiting = setTimeout(look, 150);
  });
  const given = () => {
    try {
      return decodeURIComponent(location.hash.slice(1));
    } catch {
      return "";
    }
  };
  const open = () => {
    const words = given();
    if (words === "content" || words === box.value) return; // the link that skips the head
    box.value = words;
    look();
  };
  addEventListener("hashchange", open);
  part("search").hidden = false;
  if (given() !== "") open();
}

/** The page that searches; without a program in the browser it lists the pages. */
export async function searchPage(pages: readonly OutlinedPage[]): Promise<FramedPage> {
  const library = await Deno.readTextFile(
    fileURLToPath(new URL("../umd/index.js", import.meta.resolve("minisearch"))),
  );
  const { fields, storeFields } = OPTIONS;
  const script = [
    library.replace(/\n\/\/# sourceMappingURL=.*\s*$/, ""),
    `(${runSearch})(MiniSearch, ${foldTerm}, ${
      JSON.stringify({ fields, storeFields, most: MOST_FOUND })
    });`,
  ].join("\n");
  const titles = pages.map(({ draft, title }) =>
    `<li><a href="${draft.file}">${escapeHtml(title)}</a></li>`
  );
  const index = searchIndex(pages).replaceAll("<", "\\u003c");
  return {
    file: "search.html",
    title: "Search",
    html: `<h1>Search</h1>
<div id="search" role="search" hidden>
<label for="words">Words to look for, in all lessons and pages</label>
<input id="words" type="search" autocomplete="off" spellcheck="false">
<p id="count" role="status"></p>
<ol id="found"></ol>
</div>
<h2>All pages</h2>
<ul>
${titles.join("\n")}
</ul>
<script type="application/json" id="index">${index}</script>`,
    script: `\n${script}\n`,
  };
}
