/**
 * Fills the report's head, notices and provenance from the results of a study.
 *
 * @module
 */
import { renderReport } from "../press/mod.ts";
import { oddsLine } from "../show/worth/odds_line.ts";
import type { ResultsFile, Study } from "../study/mod.ts";
import { type Comparison, comparisonSections } from "./comparison.ts";
import { provenanceRows } from "./provenance_rows.ts";
import type { Pressed } from "./press_notebooks.ts";

/** Renders report.html. */
export function studyReport(
  study: Study,
  results: ResultsFile,
  sections: readonly Pressed[],
  changes?: Comparison,
): string {
  const { heading, climate, place } = study;
  const { provenance } = results;
  return renderReport({
    title: heading.title,
    facts: [
      ["Question", heading.question],
      ...verdictFact(results),
      [
        "Place",
        `${place.name} (${degrees(place.latitude, "N", "S")}, ${
          degrees(place.longitude, "E", "W")
        }, ${place.elevation} m)`,
      ],
      ["Weather", `${climate.source} (${climate.layout})`],
      ["Author", heading.author],
    ],
    notices: results.notices.map((notice) => ({
      level: notice.level,
      about: notice.chapter,
      text: notice.text,
    })),
    sections,
    ...(changes === undefined ? {} : {
      changes: {
        heading: `What changed since the run of ${changes.results[0].provenance.time}`,
        sections: comparisonSections(changes),
      },
    }),
    provenance: provenanceRows(provenance),
  });
}

/** Dig, not yet or no, and the odds, before all else; nothing where the chapter was not run. */
function verdictFact({ figures }: ResultsFile): readonly (readonly [string, string])[] {
  const verdict = figures["worth.verdict"]?.value;
  if (typeof verdict !== "string") return [];
  return [
    ["Verdict", `${verdict} (of dig, not yet, no); the reasons stand under "The answer"`],
    ["Odds", oddsLine(figures)],
  ];
}

function degrees(value: number, positive: string, negative: string): string {
  return `${Math.abs(value)}° ${value < 0 ? negative : positive}`;
}
