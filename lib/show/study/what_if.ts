/** A trial of the reader's own beside the plan. @module */
import * as Plot from "@observablehq/plot";
import type { ChapterName } from "../../basics/mod.ts";
import {
  type ChangedFigure,
  type Changes,
  type StudyRun,
  type Trial,
  trialOf,
} from "../../study/mod.ts";
import { showNumber } from "../../units/mod.ts";
import { tableHtml, tableText } from "../kit/data_table.ts";
import { type DisplayItem, figure } from "../kit/figure.ts";
import { PALETTE } from "../kit/palette.ts";
import { paragraph } from "../kit/table.ts";
import { changedFiguresTable } from "./comparison.ts";

type Moved = ChangedFigure & { readonly share: number };

/** What was tried, in words. */
function triedWords({ changes }: Trial): string {
  return Object.entries(changes).map(([key, value]) => `${key}: ${value}`).join(", ");
}

/** Change of each figure that has a share, in per cent of the plan. */
function trialChart(trial: Trial, moved: readonly Moved[]): DisplayItem {
  const strongest = moved.toSorted((a, b) => Math.abs(b.share) - Math.abs(a.share))[0]!;
  const percent = ({ share }: Moved) => 100 * share;
  return figure({
    height: 62 + moved.length * 26,
    marginLeft: 250,
    marginTop: 10,
    x: { label: "change against the plan, per cent", grid: true, nice: true },
    y: { domain: moved.map(({ key }) => key), label: null, padding: 0.3 },
    marks: [
      Plot.barX(moved, { x: percent, y: "key", fill: PALETTE.warm }),
      Plot.ruleX([0], { stroke: PALETTE.ink }),
    ],
  }, {
    title: `Tried: ${triedWords(trial)}`,
    alt: `Change of the figures of ${trial.chapter} against the plan; most in ${strongest.key}: ` +
      `${showNumber(percent(strongest), 1)} per cent.`,
  });
}

/**
 * The figures that a trial changes: their change in per cent as bars, and the values.
 *
 * @param trial beside the plan
 */
export function trialItems(trial: Trial): readonly DisplayItem[] {
  const { figures, same, chapter } = trial;
  if (figures.length === 0) {
    return [paragraph(`${triedWords(trial)} changes no figure of ${chapter}.`)];
  }
  const moved = figures.filter((one): one is Moved => one.share !== null && one.share !== 0);
  const data = changedFiguresTable(figures, ["as planned", "tried"]);
  const title = `Tried: ${triedWords(trial)}; ${same} other figures of the chapter stay`;
  return [
    ...(moved.length === 0 ? [] : [trialChart(trial, moved)]),
    { "text/html": tableHtml(data, title), "text/plain": `${title}\n${tableText(data)}` },
  ];
}

/** Shown as long as nothing is tried. */
const NOTHING = "Nothing is changed yet: put a value in place of null and run the cell again.";

/**
 * Tries other values for some keys of the study, which itself stays as it is, and shows what that
 * changes in a chapter.
 *
 * @example
 * ```ts ignore
 * await show(...await whatIf(run, { "tubes.length": "24 m", "tubes.count": 20 }, "tubes"));
 * ```
 *
 * @param run of the plan
 * @param changes values by dotted key, as a study file writes them; those that are null stay as
 * planned ("none" takes something away)
 * @param chapter whose figures are shown
 * @throws {InputErrors} where a key does not exist or a value cannot be
 */
export async function whatIf(
  run: StudyRun,
  changes: Changes,
  chapter: ChapterName,
): Promise<readonly DisplayItem[]> {
  const tried = Object.entries(changes).filter(([, value]) => value !== null);
  if (tried.length === 0) return [paragraph(NOTHING)];
  return trialItems(await trialOf(run, Object.fromEntries(tried), chapter));
}
