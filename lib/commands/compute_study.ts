/**
 * Computes what a study needs, what is read first first, and says what comes as it comes.
 *
 * @module
 */
import { type ChapterName, isUserFault } from "../basics/mod.ts";
import type { StudyRun } from "../study/mod.ts";
import { oddsLine } from "../show/worth/odds_line.ts";
import { headlines } from "./headlines.ts";
import type { Progress } from "./progress.ts";
import { ALL_CHAPTERS, type StudyNeeds } from "./study_needs.ts";
import { CommandFailure } from "./terminal.ts";

/** The results of a run by their names. */
export function gettersOf(run: StudyRun): Readonly<Record<string, () => Promise<unknown>>> {
  return run as unknown as Readonly<Record<string, () => Promise<unknown>>>;
}

/**
 * Asks for all results at once: the workers take the chapters before what is computed only when asked
 * for. The figures a person reads first are shown as soon as their chapter is there, and the odds as
 * soon as they are counted; where they are not wanted, how to get them, after the verdict.
 *
 * @throws {unknown} whatever the first result that cannot be computed throws
 */
export async function computeResults(
  run: StudyRun,
  needs: StudyNeeds,
  progress: Progress,
): Promise<void> {
  const oddsAfter = needs.results.includes("odds") ? "odds" : "worth";
  await Promise.all(needs.results.map(async (name) => {
    await gettersOf(run)[name]!();
    const chapter = ALL_CHAPTERS.find((one) => one === name);
    if (chapter !== undefined) await showHeadlines(run, chapter, progress);
    if (name === oddsAfter) progress.show(`  odds: ${oddsLine(await run.figures("worth"))}`);
  }));
}

async function showHeadlines(run: StudyRun, chapter: ChapterName, progress: Progress) {
  for (const line of headlines(chapter, await run.figures(chapter))) progress.show(line);
}

/** Says in plain words why a study cannot be computed. */
export function cannotCompute(path: string, reason: unknown): CommandFailure {
  if (reason instanceof CommandFailure) return reason;
  const { name, message } = reason instanceof Error ? reason : new Error(String(reason));
  const text = isUserFault(reason) ? message : `${name}: ${message}`;
  return new CommandFailure(`${path}: the study cannot be computed: ${text}`);
}
