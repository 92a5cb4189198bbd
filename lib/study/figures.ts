/** The figures of a run, one flat list with units and labels. @module */
import type { FigureRow, Figures } from "../basics/mod.ts";
import { type AnyChapter, type ChapterResults, CHAPTERS } from "./chapters.ts";

type Rows = (result: unknown) => readonly FigureRow[];

/**
 * Every figure of a run, chapter by chapter. A key has one value: where a later chapter refines a
 * figure of an earlier one, the later value stands in the earlier one's place.
 *
 * @param results of the chapters that were run
 */
export function studyFigures(results: Partial<ChapterResults>): Figures {
  return Object.fromEntries(
    CHAPTERS.flatMap((chapter: AnyChapter) => {
      const result = results[chapter.name];
      if (result === undefined) return [];
      const { figures, provisionalFigures } = chapter as {
        figures: Rows;
        provisionalFigures?: Rows;
      };
      const provisional = (provisionalFigures?.(result) ?? []).map(
        ([key, figure]): FigureRow => [key, { ...figure, provisional: true }],
      );
      return [...figures(result), ...provisional];
    }),
  );
}
