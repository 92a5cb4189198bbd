/**
 * What a choice of notebooks needs of a study: the results they ask the run for, read from their
 * cells. A notebook that asks in another way computes what it needs itself.
 *
 * @module
 */
import type { AnyComputation, ChapterName } from "../basics/mod.ts";
import type { Notebook } from "../press/mod.ts";
import { CHAPTERS, COMPUTATIONS, extrasWithFigures } from "../study/mod.ts";

/** Names of all chapters, in the order of the job. */
export const ALL_CHAPTERS: readonly ChapterName[] = CHAPTERS.map(({ name }) => name);

/**
 * Names of the results a notebook asks the run for: chapters, extras.
 *
 * @param notebook its cells
 * @param whole true where figures wait for the extras that give some
 */
export function notebookNeeds(notebook: Notebook, whole = false): ReadonlySet<string> {
  const needs = new Set<string>();
  for (const cell of notebook.cells) {
    if (cell.cell_type !== "code") continue;
    for (const [, name, words] of cell.source.matchAll(/\brun\.(\w+)\(([^)]*)\)/g)) {
      const behind = resultsBehind(name!, words!);
      const extras = whole && name === "figures" ? extrasWithFigures(behind) : [];
      for (const need of [...behind, ...extras]) needs.add(need);
    }
  }
  return needs;
}

function resultsBehind(call: string, words: string): readonly string[] {
  if (COMPUTATIONS.has(call)) return [call];
  const chapters = ALL_CHAPTERS.filter((chapter) => words.includes(`"${chapter}"`));
  if (call === "figures" && chapters.length > 0) return chapters;
  return ["figures", "notices", "results"].includes(call) ? ALL_CHAPTERS : [];
}

/** These results and all that they are computed from. */
export function withEarlier(names: Iterable<string>): ReadonlySet<string> {
  const found = new Set<string>();
  const add = (name: string): void => {
    if (found.has(name)) return;
    for (const earlier of COMPUTATIONS.get(name)?.after ?? []) add(earlier);
    found.add(name);
  };
  for (const name of names) add(name);
  return found;
}

/** What is computed for a choice of notebooks, and whose figures are written. */
export interface StudyNeeds {
  /** results and what they are computed from, in the order of the job */
  readonly results: readonly string[];
  /**
   * chapters whose figures, notices and hours are written: all up to the last that is computed where
   * the store is, because it refines figures of others; else those that have a notebook in the choice
   */
  readonly chapters: readonly ChapterName[];
}

/**
 * Needs of some notebooks.
 *
 * @param notebooks names such as "05-headers", and cells
 */
export function needsOf(
  notebooks: readonly { readonly name: string; readonly notebook: Notebook }[],
): StudyNeeds {
  const own = ALL_CHAPTERS.filter((chapter) =>
    notebooks.some(({ name }) => name.replace(/^\d+-/, "").split("-")[0] === chapter)
  );
  const needs = withEarlier([
    ...own,
    ...notebooks.flatMap((one) => [...notebookNeeds(one.notebook)]),
  ]);
  return {
    results: [...COMPUTATIONS.keys()].filter((name) => needs.has(name)),
    chapters: needs.has("store") ? upToLast(needs) : own,
  };
}

function upToLast(needs: ReadonlySet<string>): readonly ChapterName[] {
  return ALL_CHAPTERS.slice(0, ALL_CHAPTERS.findLastIndex((chapter) => needs.has(chapter)) + 1);
}

/** Needs of a quick run: every chapter; extras only as far as one needs them, and not written. */
export const QUICK_NEEDS: StudyNeeds = { results: ALL_CHAPTERS, chapters: ALL_CHAPTERS };

const isOnlyAsked = (computation: AnyComputation) =>
  (computation as { readonly onlyAsked?: boolean }).onlyAsked === true;

/** Needs of a whole study: every chapter, and every extra but those for whoever asks for them. */
export const ALL_NEEDS: StudyNeeds = {
  results: [...COMPUTATIONS].filter(([, one]) => !isOnlyAsked(one)).map(([name]) => name),
  chapters: ALL_CHAPTERS,
};
