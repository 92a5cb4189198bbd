/**
 * The bibliography and the places that cite it.
 *
 * A published source is cited by its key in square brackets, `[hollmuller-2003]`: names in lower
 * case, then the year, or `web` for a living document.
 *
 * @module
 */
import { readDataTable } from "../../basics/mod.ts";

/** Where the bibliography lies in the project. */
export const BIBLIOGRAPHY = "data/sources/sources.csv";

const CITATION = /\[([a-z][a-z0-9]*(?:-[a-z0-9]+)*-(?:\d{4}[a-z]?|web))\]/g;
const COLUMNS = [
  "key",
  "authors",
  "year",
  "title",
  "container",
  "locator",
  "doi",
  "number",
  "note",
] as const;

/** A published source. */
export type Source = Readonly<Record<typeof COLUMNS[number], string>> & {
  /** line in the bibliography */
  readonly line: number;
};

/** A file of the project. */
export interface TextFile {
  /** path in the project, with slashes */
  readonly path: string;
  readonly text: string;
}

/** Keys that a text cites, each once, in the order of their first use. */
export function citedKeys(text: string): string[] {
  return [...new Set([...text.matchAll(CITATION)].map((match) => match[1]!))];
}

/** Makes each citation a link to its entry. */
export function linkCitations(text: string): string {
  return text.replace(CITATION, "[$1](sources.md#$1)");
}

/**
 * Reads the bibliography.
 *
 * @throws {InputError} where a column or a cell is missing
 */
export function readBibliography(text: string): Source[] {
  return readDataTable(text, BIBLIOGRAPHY, COLUMNS).map((row) => ({
    ...Object.fromEntries(COLUMNS.map((name) => [name, row.text(name)])) as Record<
      typeof COLUMNS[number],
      string
    >,
    line: row.line,
  }));
}

/** Paths of the files that cite each key. */
export function citations(files: readonly TextFile[]): Map<string, string[]> {
  const found = new Map<string, string[]>();
  for (const { path, text } of files) {
    for (const key of citedKeys(text)) found.set(key, [...found.get(key) ?? [], path]);
  }
  return found;
}

/** Says which keys are cited but not listed, listed twice, misspelt, or listed and never cited. */
export function bibliographyFaults(
  sources: readonly Source[],
  cited: ReadonlyMap<string, readonly string[]>,
): string[] {
  const listed = new Map<string, number>();
  const faults: string[] = [];
  for (const { key, line } of sources) {
    const at = `${BIBLIOGRAPHY}:${line}: `;
    if (citedKeys(`[${key}]`).length === 0) {
      faults.push(`${at}"${key}" is not a key: expected names and a year, such as colebrook-1939`);
    } else if (listed.has(key)) {
      faults.push(`${at}"${key}" is listed in line ${listed.get(key)} already`);
    } else if (!cited.has(key)) {
      faults.push(`${at}nothing cites [${key}]: cite it where it is used, or drop the row`);
    }
    listed.set(key, line);
  }
  for (const [key, paths] of cited) {
    if (!listed.has(key)) {
      faults.push(`${paths[0]}: [${key}] is not in ${BIBLIOGRAPHY}: add it, or mend the key`);
    }
  }
  return faults;
}

const HONEST =
  /from memory|no source|exact|recomputed|computed|by hand|hand-worked|our own|own result|of ours|convention|geometry|closed form|published stores|extension|guidance|product practice|public domain|as above|mathjs|unit definitions|calendar/i;

/**
 * Says where a doc comment opens with "Source:" and names neither a key nor, in plain words, why there
 * is none: from memory, no source, exact, recomputed and the like.
 */
export function unnamedSources(file: TextFile): string[] {
  const lines = file.text.split("\n");
  const faults: string[] = [];
  lines.forEach((line, index) => {
    const start = /^\s*\* (?:.*\s)?Source: (.*)$/.exec(line);
    if (start === null) return;
    let text = start[1]!;
    for (let next = index + 1; /^\s*\* [^@]/.test(lines[next] ?? ""); next++) {
      text += ` ${lines[next]!.replace(/^\s*\* /, "")}`;
    }
    if (citedKeys(text).length === 0 && !HONEST.test(text)) {
      faults.push(
        `${file.path}:${index + 1}: "Source: ${text.slice(0, 50)}…" cites no key of ` +
          `${BIBLIOGRAPHY}, nor says "from memory" or "no source"`,
      );
    }
  });
  return faults;
}

const MONTH =
  "(?:Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sep|Oct|Nov|Dec)(?:r?uary|ch|il|e|y|ust|t?ember|ober)?\\b";
/** One to three names and a year, as in Yen 1981 [yen-1981], but not March 1993. */
const AUTHOR_AND_YEAR = new RegExp(
  `(?<![\\p{L}\\d])(?!${MONTH})\\p{Lu}\\p{L}+(?: et al\\.|(?:, \\p{Lu}\\p{L}+)* & \\p{Lu}\\p{L}+)?,?` +
    " \\(?(?:1[89]\\d{2}|20[0-2]\\d)(?![\\d-])",
  "gu",
);

/**
 * Says where a comment of the code, a row of a table or a page names an author and a year and cites
 * no key at all.
 *
 * @param file a source file, a table or a page
 */
export function uncitedNames(file: TextFile): string[] {
  return passages(file).flatMap(({ line, text }) => {
    const named = text.replace(/\s+/g, " ").match(AUTHOR_AND_YEAR);
    if (named === null || citedKeys(text).length > 0) return [];
    return [`${file.path}:${line}: "${named[0]}" is named without a key of ${BIBLIOGRAPHY}`];
  });
}

/** Parts of a file that cite for themselves: comments, rows, or the whole page. */
function passages({ path, text }: TextFile): { readonly line: number; readonly text: string }[] {
  if (path.endsWith(".md")) return [{ line: 1, text }];
  if (path.endsWith(".csv")) return text.split("\n").map((row, i) => ({ line: i + 1, text: row }));
  return [...text.matchAll(/\/\*\*[\s\S]*?\*\/|(?:^ *\/\/.*\n?)+/gm)].map((match) => ({
    line: text.slice(0, match.index).split("\n").length,
    text: match[0].replace(/^\s*(?:\*|\/\/) ?/gm, ""),
  }));
}
