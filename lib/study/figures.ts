/** The figures of a run, one flat list with units and labels. @module */
import type { FigureRow, Figures } from "../basics/mod.ts";
import { type AnyChapter, type ChapterResults, CHAPTERS } from "./chapters.ts";

type Rows = (result: unknown) => readonly FigureRow[];

/**
 * Every figure of a run, chapter by chapter. A key has one value: where a later chapter refines a
 * figure of an earlier one, the later value stands in the earlier one's place.
 *
 * @param results of the chapters that were run
 * @param extras results computed on demand as far as they are there, by name
 */
export function studyFigures(
  results: Partial<ChapterResults>,
  extras: ReadonlyMap<string, unknown> = new Map(),
): Figures {
  return Object.fromEntries(
    CHAPTERS.flatMap((chapter: AnyChapter) => {
      const result = results[chapter.name];
      if (result === undefined) return [];
      const { figures, provisionalFigures } = chapter as {
        figures: Rows;
        provisionalFigures?: Rows;
      };
      return [
        ...figures(result),
        ...(provisionalFigures?.(result) ?? []).map(provisional),
        ...extraFigures(chapter, extras),
      ];
    }),
  );
}

const provisional = (
  [key, figure]: FigureRow,
): FigureRow => [key, { ...figure, provisional: true }];

/** Figures of a chapter's extras; those that were not computed say so, and are provisional. */
function extraFigures(
  chapter: AnyChapter,
  extras: ReadonlyMap<string, unknown>,
): readonly FigureRow[] {
  return Object.entries(chapter.extras as Readonly<Record<string, { figures?: Rows }>>)
    .flatMap(([name, { figures }]) => {
      const rows = figures?.(extras.get(name)) ?? [];
      return extras.has(name) ? rows : rows.map(provisional);
    });
}
