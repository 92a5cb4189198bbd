/** What a reviewer asks of a study, as tables. @module */
import type { SavedHeatDoubt, StudyReview } from "../../study/mod.ts";
import type { DisplayItem } from "../kit/figure.ts";
import { table } from "../kit/table.ts";

const VERDICTS = { true: "yes", false: "NO", null: "for you to judge" } as const;

/** The checks in order, with what was found and what is expected. */
export function reviewTable({ checks }: Pick<StudyReview, "checks">): DisplayItem {
  return table(checks, [
    { head: "question", value: ({ question }) => question },
    { head: "found", value: ({ found }) => found },
    { head: "expected", value: ({ expected }) => expected },
    { head: "as expected", value: ({ passes }) => VERDICTS[`${passes}`] },
  ], "What to ask of this study");
}

/** How far the heat saved is known, part by part and together. */
export function savedDoubtTable({ savedHeat, parts, together }: SavedHeatDoubt): DisplayItem {
  const rows = [
    { name: "heat saved in a year", value: savedHeat },
    ...parts.map(({ name, half }) => ({ name: `± ${name}`, value: half })),
    { name: "± all of these together", value: together },
  ];
  return table(rows, [
    { head: "", value: ({ name }) => name },
    { head: "back-up heat", value: ({ value }) => value, kind: "energy", us: false },
  ], "How far the heat saved is known");
}
