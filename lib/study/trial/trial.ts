/** The figures of a chapter with some keys of the study changed, beside the plan. @module */
import type { ChapterName } from "../../basics/mod.ts";
import { type ChangedFigure, compareFigures } from "../compare/differences.ts";
import type { StudyRun } from "../run/run.ts";
import { type Changes, trialRun } from "./trial_run.ts";

/** A trial beside the plan. */
export interface Trial {
  /** what was changed */
  readonly changes: Changes;
  /** the chapter whose figures are compared */
  readonly chapter: ChapterName;
  /** figures of the chapter that are not the same, plan first */
  readonly figures: readonly ChangedFigure[];
  /** count of those that stay */
  readonly same: number;
}

/**
 * Computes a chapter, and all before it, once more with some keys changed. The study file stays as it is.
 *
 * @param run of the plan
 * @param changes values by dotted key, as a study file writes them
 * @param chapter whose figures are wanted
 * @throws {InputErrors} where a key does not exist or a value cannot be
 */
export async function trialOf(
  run: StudyRun,
  changes: Changes,
  chapter: ChapterName,
): Promise<Trial> {
  const trial = await trialRun(run.study, changes);
  const [planned, tried] = await Promise.all(
    [run, trial].map((one) => one.only([chapter]).figures()),
  );
  return { changes, chapter, ...compareFigures(planned!, tried!) };
}
