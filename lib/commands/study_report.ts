/**
 * Fills the pages of a study, the report and the workbook behind it, from its results.
 *
 * @module
 */
import { type PageChanges, renderReport, renderWorkbook } from "../press/mod.ts";
import { oddsLine } from "../show/worth/odds_line.ts";
import { inReadersOrder, shownBoth } from "../show/kit/reader.ts";
import type { ResultsFile, Study } from "../study/mod.ts";
import { DOUBT_PAGE } from "./doubt_file.ts";
import { type Comparison, comparisonSections } from "./comparison.ts";
import { provenanceRows } from "./provenance_rows.ts";
import type { Pressed } from "./press_notebooks.ts";

/** File of the workbook beside the report. */
export const WORKBOOK = "workbook.html";

/** Name of the notebook that is the report. */
const REPORT_NOTEBOOK = "10-report";

/** What the pages show besides the notebooks. */
export interface PageExtras {
  /** what changed since an earlier run */
  readonly changes?: Comparison | undefined;
  /** true where the workbook keeps its exercises */
  readonly exercises?: boolean;
  /** true where the run has a page for whoever checks the study */
  readonly doubt?: boolean;
}

/**
 * Renders report.html; null where the notebook of the report was not run.
 *
 * @param pressed executed notebooks, in any order
 */
export function studyReport(
  study: Study,
  results: ResultsFile,
  pressed: readonly Pressed[],
  { changes, doubt }: PageExtras = {},
): string | null {
  const { heading, place } = study;
  const own = pressed.find(({ name }) => name === REPORT_NOTEBOOK);
  if (own === undefined) return null;
  return renderReport({
    title: heading.title,
    facts: [place.name, heading.author, results.provenance.time.slice(0, 10)],
    notebook: own.notebook,
    provenance: provenanceRows(results.provenance),
    workbook: WORKBOOK,
    paper: heading.units === "US" ? "Letter" : "A4",
    ...(doubt === true ? { checks: DOUBT_PAGE } : {}),
    ...changesPart(changes),
  });
}

/** Renders workbook.html: every notebook but that of the report, with its code. */
export function studyWorkbook(
  study: Study,
  results: ResultsFile,
  pressed: readonly Pressed[],
  { changes, exercises }: PageExtras = {},
): string {
  const { heading, climate, place } = study;
  return renderWorkbook({
    title: heading.title,
    facts: [
      ["Question", heading.question],
      ...verdictFact(results),
      [
        "Place",
        `${place.name} (${degrees(place.latitude, "N", "S")}, ${
          degrees(place.longitude, "E", "W")
        }, ${shownBoth(place.elevation, "length")})`,
      ],
      ["Weather", `${climate.source} (${climate.layout})`],
      ["Author", heading.author],
    ],
    notices: results.notices.map((notice) => ({
      level: notice.level,
      about: notice.chapter,
      text: inReadersOrder(notice.text),
    })),
    sections: pressed.filter(({ name }) => name !== REPORT_NOTEBOOK),
    exercises: exercises ?? false,
    provenance: provenanceRows(results.provenance),
    ...changesPart(changes),
  });
}

function changesPart(changes: Comparison | undefined): { readonly changes?: PageChanges } {
  if (changes === undefined) return {};
  return {
    changes: {
      heading: `What changed since the run of ${changes.results[0].provenance.time}`,
      sections: comparisonSections(changes),
    },
  };
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
