/** Two finished runs read, set side by side and written: as text, CSV and a page. @module */
import { basename, join, resolve } from "node:path";
import { InputError } from "../basics/mod.ts";
import {
  type ComparedHours,
  compareHours,
  compareResults,
  type Differences,
  type HouseHours,
  readHours,
  readResults,
  readTextFile,
  type ResultsFile,
} from "../study/mod.ts";
import { type DataTable, tableHtml, tableText } from "../show/kit/data_table.ts";
import {
  changedFiguresTable,
  changedNoticesTable,
  changedValuesTable,
  comparedHoursChart,
  differencesCsv,
  type RunNames,
} from "../show/study/comparison.ts";
import { type PageSection, renderPage } from "../press/page.ts";

/** Two runs side by side, ready to be shown. */
export interface Comparison {
  /** folders as given, the last part, told apart by their place where they are alike */
  readonly names: RunNames;
  readonly results: readonly [first: ResultsFile, second: ResultsFile];
  readonly differences: Differences;
  /** null where one of the runs has no hours */
  readonly hours: ComparedHours | null;
}

async function textIn(folder: string, name: string, kind: "settings" | "table"): Promise<string> {
  return await readTextFile(join(folder, name), `${name} of a finished run`, kind, {
    settings: 20e6,
    table: 200e6,
  });
}

async function hoursIn(folder: string): Promise<HouseHours | null> {
  const path = join(folder, "hourly.csv");
  const found = await Deno.stat(path).then(() => true, (error) => {
    if (error instanceof Deno.errors.NotFound) return false;
    throw error;
  });
  return found ? readHours(await textIn(folder, "hourly.csv", "table"), path) : null;
}

function namesOf(first: string, second: string): RunNames {
  const [a, b] = [basename(resolve(first)), basename(resolve(second))];
  return a === b ? [`A (${first})`, `B (${second})`] : [a, b];
}

/** A finished run as far as it is compared. */
export interface FinishedRun {
  readonly folder: string;
  readonly results: ResultsFile;
  /** null where the store was not run */
  readonly hours: HouseHours | null;
}

/**
 * Reads a finished run.
 *
 * @param folder of it
 * @throws {InputError} where it holds no finished run
 */
export async function readRun(folder: string): Promise<FinishedRun> {
  const found = await Deno.stat(folder).catch(() => null);
  if (found?.isDirectory !== true) {
    throw new InputError("Cannot compare: this is no folder; name the folder of a finished run", {
      file: folder,
    });
  }
  const text = await textIn(folder, "results.json", "settings");
  return {
    folder,
    results: readResults(text, join(folder, "results.json")),
    hours: await hoursIn(folder),
  };
}

/**
 * Sets two finished runs side by side.
 *
 * @param first run compared with
 * @param second run compared
 * @param names as they are shown; the folders' unless given
 */
export function compareRuns(
  first: FinishedRun,
  second: FinishedRun,
  names: RunNames = namesOf(first.folder, second.folder),
): Comparison {
  return {
    names,
    results: [first.results, second.results],
    differences: compareResults(first.results, second.results),
    hours: first.hours === null || second.hours === null
      ? null
      : compareHours(first.hours, second.hours),
  };
}

interface Part {
  readonly heading: string;
  readonly id: string;
  readonly table: DataTable;
  /** said where the table is empty */
  readonly none: string;
}

function partsOf({ differences, names }: Comparison, labels: boolean): Part[] {
  const { inputs, figures, same, provenance } = differences;
  return [
    {
      heading: "Figures",
      id: "figures",
      table: changedFiguresTable(figures, names, labels),
      none: `All ${same} figures are the same.`,
    },
    {
      heading: "Inputs",
      id: "inputs",
      table: changedValuesTable(inputs, names),
      none: "All inputs are the same.",
    },
    {
      heading: "Notices",
      id: "notices",
      table: changedNoticesTable(differences),
      none: "The notices are the same.",
    },
    {
      heading: "Weather and library",
      id: "library",
      table: changedValuesTable(provenance, names),
      none: "Study, weather, library and Deno are the same.",
    },
  ];
}

/** What the terminal shows of a comparison. */
export function comparisonLines(comparison: Comparison): string[] {
  const { names, differences: { figures, same } } = comparison;
  const counted = `${figures.length} of ${figures.length + same} figures changed`;
  return [
    `${names[1]} against ${names[0]}: ${counted}`,
    ...partsOf(comparison, false).flatMap(({ heading, table, none }) => [
      "",
      heading,
      ...(table.rows.length === 0 ? [none] : tableText(table).trimEnd().split("\n")),
    ]),
  ];
}

/** The sections that show what changed. */
export function comparisonSections(comparison: Comparison): PageSection[] {
  const { hours, names } = comparison;
  const sections = partsOf(comparison, true).map(({ heading, id, table, none }) => ({
    heading,
    id,
    html: table.rows.length === 0 ? `<p>${none}</p>` : tableHtml(table),
  }));
  if (hours === null) return sections;
  const html = comparedHoursChart(hours, names)["text/html"];
  return [sections[0]!, { heading: "The house's air", id: "air", html }, ...sections.slice(1)];
}

/** Writes differences.html and differences.csv. */
export async function writeComparison(comparison: Comparison, folder: string): Promise<void> {
  const { names, results, differences } = comparison;
  const facts = results.map(({ study, provenance, chapters }, k) => {
    const part = chapters === undefined ? "" : `, chapters ${chapters.join(", ")} alone`;
    return [names[k]!, `${study.title}, run at ${provenance.time}${part}`] as const;
  });
  const page = renderPage(`What changed: ${names[1]} against ${names[0]}`, [
    ...facts,
    [
      "How to read it",
      "A change is the second run less the first. It is beyond doubt where it is more than the 95 % " +
      "ranges of both figures explain, taken as independent; a figure without a range says nothing " +
      "of doubt.",
    ],
  ], comparisonSections(comparison));
  await Deno.writeTextFile(join(folder, "differences.html"), page);
  await Deno.writeTextFile(join(folder, "differences.csv"), differencesCsv(differences));
}
