/**
 * Symbols of the formulas, from the tables that the pages of the documentation carry under the
 * heading "Symbols".
 *
 * @module
 */
import type { TextFile } from "./bibliography.ts";

/** A symbol as one page explains it. */
export interface SymbolRow {
  readonly symbol: string;
  readonly meaning: string;
  /** `1` for a ratio */
  readonly unit: string;
  /** path of the page in the project */
  readonly page: string;
}

/** A symbol with all the pages that explain it alike. */
export interface SymbolEntry extends Omit<SymbolRow, "page"> {
  readonly pages: readonly string[];
}

const HEADING = /^#{2,3} Symbols\s*$/m;
/** Letters that need no explanation. */
const PLAIN = new Set(["π", "Σ", "∂", "Π"]);

/** The rows of the table under the heading "Symbols" of a page. */
export function symbolRows(page: TextFile): SymbolRow[] {
  const start = HEADING.exec(page.text);
  if (start === null) return [];
  const rest = page.text.slice(start.index + start[0].length);
  const end = rest.search(/^#{1,3} /m);
  const lines = (end < 0 ? rest : rest.slice(0, end)).split("\n")
    .filter((line) => line.startsWith("|"));
  return lines.slice(2).map((line) => {
    const cells = line.split("|").slice(1, -1).map((cell) => cell.trim());
    return { symbol: cells[0]!, meaning: cells[1] ?? "", unit: cells[2] ?? "", page: page.path };
  });
}

/** Symbols of all pages, those explained alike together, in the order of the letters. */
export function mergeSymbols(rows: readonly SymbolRow[]): SymbolEntry[] {
  const merged = new Map<string, SymbolEntry>();
  for (const { page, ...row } of rows) {
    const key = `${row.symbol}|${row.meaning}|${row.unit}`;
    const known = merged.get(key);
    merged.set(key, { ...row, pages: [...known?.pages ?? [], page] });
  }
  const order = new Intl.Collator("en");
  return [...merged.values()].sort((a, b) =>
    order.compare(a.symbol, b.symbol) || order.compare(a.meaning, b.meaning)
  );
}

/** Greek letters in the comments of a source file. */
export function greekLetters(text: string): string[] {
  const comments = [...text.matchAll(/\/\*[\s\S]*?\*\/|\/\/.*$/gm)].map(([found]) => found).join(
    "\n",
  );
  return [...new Set(comments.match(/[α-ωϑϕΑ-Ω]/g) ?? [])].filter((letter) => !PLAIN.has(letter));
}

/**
 * Says which symbols of a page the page and its chapter never use, which have no meaning or unit, and
 * which Greek letters in the chapter's comments its page leaves unexplained.
 *
 * @param page a page with a table of symbols
 * @param chapter source files of the chapter
 */
export function symbolFaults(page: TextFile, chapter: readonly TextFile[]): string[] {
  const rows = symbolRows(page);
  const heading = HEADING.exec(page.text)?.index ?? page.text.length;
  const used = page.text.slice(0, heading) + chapter.map(({ text }) => text).join("\n");
  const faults: string[] = [];
  for (const { symbol, meaning, unit } of rows) {
    if (meaning === "" || unit === "") {
      faults.push(`${page.path}: symbol "${symbol}" lacks its meaning or its unit`);
    }
    if (!symbol.split(/,\s*/).every((each) => used.includes(each))) {
      faults.push(
        `${page.path}: symbol "${symbol}" is used neither on the page nor in its chapter`,
      );
    }
  }
  const known = rows.map(({ symbol }) => symbol).join(" ");
  for (const file of chapter) {
    for (const letter of greekLetters(file.text)) {
      if (!known.includes(letter)) {
        faults.push(
          `${file.path}: ${letter} in a comment is not among the symbols of ${page.path}`,
        );
      }
    }
  }
  return faults;
}
