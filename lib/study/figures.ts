/** The figures of a run, one flat list with units and labels. @module */
import type { FigureRow, Figures } from "../basics/mod.ts";
import { type ChapterResults, CHAPTERS } from "./chapters.ts";

/** Every figure of a run, chapter by chapter. */
export function studyFigures(results: ChapterResults): Figures {
  return Object.fromEntries(
    CHAPTERS.flatMap(({ name, figures }) =>
      (figures as (result: unknown) => readonly FigureRow[])(results[name])
    ),
  );
}
