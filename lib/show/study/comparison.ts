/** Two finished runs side by side: what changed between them. @module */
import Papa from "papaparse";
import { formatMonthly, formatQuantity } from "../../units/mod.ts";
import { shown } from "../kit/reader.ts";
import { FIELDS } from "../../study/file/fields.ts";
import type {
  ChangedFigure,
  ChangedValue,
  ComparedHours,
  Differences,
  Figure,
} from "../../study/mod.ts";
import { type Notice, wordsCell } from "../../basics/mod.ts";
import { COUNTED_LIMITS } from "../../study/mod.ts";
import { type DataTable, dataTable } from "../kit/data_table.ts";
import { durationFigure } from "../kit/duration.ts";
import type { DisplayItem } from "../kit/figure.ts";
import { PALETTE } from "../kit/palette.ts";
import { figureTexts } from "./figures_table.ts";

/** Names of the two runs, as they are shown. */
export type RunNames = readonly [first: string, second: string];

/** An input as text, with its SI unit where it has one. */
function inputText(key: string, value: unknown): string {
  if (value === undefined) return "–";
  if (value === null) return "none";
  const kind = FIELDS.get(key)?.kind;
  if (kind !== undefined && kind !== "text") {
    if (typeof value === "number") return formatQuantity(value, kind, "SI");
    if (isTwelve(value)) return formatMonthly(value, kind);
  }
  return typeof value === "object" ? JSON.stringify(value) : String(value);
}

function isTwelve(value: unknown): value is number[] {
  return Array.isArray(value) && value.length === 12 &&
    value.every((one) => typeof one === "number");
}

/**
 * Inputs, or facts of the runs, that differ.
 *
 * @param changed from the comparison
 * @param names of the runs
 */
export function changedValuesTable(changed: readonly ChangedValue[], names: RunNames): DataTable {
  return dataTable(changed, [
    { head: "key", value: ({ key }) => key },
    { head: names[0], value: ({ key, first }) => inputText(key, first) },
    { head: names[1], value: ({ key, second }) => inputText(key, second) },
  ]);
}

const DOUBT_WORDS = { true: "yes", false: "no" } as const;

/** A change as text: with its sign, in the unit of the figure. */
function changeText({ key, first, change }: ChangedFigure): string {
  if (change === null) return "";
  const text = figureTexts(key, asDifference(first!, Math.abs(change)))[0];
  return `${change < 0 ? "−" : "+"}${text}`;
}

/** A change of a temperature is a difference. */
function asDifference(figure: Figure, change: number): Figure {
  return { value: change, unit: figure.unit === "degC" ? "K" : figure.unit, label: figure.label };
}

/**
 * Figures that differ, with the signed change of the second run, per cent, and whether the change is
 * more than the ranges of both explain.
 *
 * @param changed from the comparison
 * @param names of the runs
 * @param labels false: the keys alone, for narrow places
 */
export function changedFiguresTable(
  changed: readonly ChangedFigure[],
  names: RunNames,
  labels = true,
): DataTable {
  const text = (key: string, figure: Figure | undefined) =>
    figure === undefined ? "not there" : figureTexts(key, figure)[0];
  return dataTable(changed, [
    labels
      ? { head: "figure", value: ({ first, second }) => (second ?? first)!.label }
      : { head: "figure", value: ({ key }) => key },
    { head: names[0], value: ({ key, first }) => text(key, first), right: true },
    { head: names[1], value: ({ key, second }) => text(key, second), right: true },
    { head: "change", value: changeText, right: true },
    {
      head: "per cent",
      value: ({ share }) =>
        share === null ? "" : `${share < 0 ? "−" : "+"}${shown(Math.abs(share), "share")}`,
      right: true,
    },
    {
      head: "beyond doubt",
      value: ({ beyondDoubt }) => beyondDoubt === null ? "" : DOUBT_WORDS[`${beyondDoubt}`],
    },
    ...(labels ? [{ head: "key in results.json", value: ({ key }: ChangedFigure) => key }] : []),
  ]);
}

/**
 * Notices that one of the runs has and the other has not.
 *
 * @param differences of the runs
 */
export function changedNoticesTable({ gained, lost }: Differences): DataTable {
  const rows = [
    ...gained.map((notice) => ({ notice, change: "new" })),
    ...lost.map((notice) => ({ notice, change: "gone" })),
  ];
  const of = (read: (notice: Notice) => string) => (row: typeof rows[number]) => read(row.notice);
  return dataTable(rows, [
    { head: "", value: ({ change }) => change },
    { head: "level", value: of(({ level }) => level) },
    { head: "chapter", value: of(({ chapter }) => chapter) },
    { head: "notice", value: of(({ text }) => text) },
  ]);
}

/**
 * How long the house is how cold in both runs, one curve over the other.
 *
 * @param hours of both runs
 * @param names of the runs
 */
export function comparedHoursChart(hours: ComparedHours, names: RunNames): DisplayItem {
  const frost = COUNTED_LIMITS.indexOf(0);
  return durationFigure({
    title: "Hours of the year below a temperature, with the store",
    axis: "house air (°C)",
    kind: "temperature",
    limits: COUNTED_LIMITS,
    coldEnd: 2200,
    alt:
      `Two curves of the house's air sorted from the coldest hour: ${names[0]} is below freezing ` +
      `for ${hours.firstBelow[frost]} hours, ${names[1]} for ${hours.secondBelow[frost]}.`,
    curves: [
      {
        label: names[0],
        colour: PALETTE.cold,
        series: hours.first,
        hoursBelow: hours.firstBelow,
        dashed: true,
      },
      {
        label: names[1],
        colour: PALETTE.warm,
        series: hours.second,
        hoursBelow: hours.secondBelow,
      },
    ],
  });
}

/** Cells of a CSV: numbers as they are, so that they can be counted with. */
function cell(value: unknown): string | number {
  if (value === undefined || value === null) return "";
  if (typeof value === "number") return value;
  return wordsCell(typeof value === "string" ? value : JSON.stringify(value));
}

/**
 * All differences as one CSV: what it is, its key, both values in SI, change, share of the first and
 * whether it is beyond doubt.
 *
 * @param differences of the runs
 */
export function differencesCsv(differences: Differences): string {
  const { inputs, figures, gained, lost, provenance } = differences;
  const values = (what: string, changed: readonly ChangedValue[]) =>
    changed.map((
      { key, first, second },
    ) => [what, wordsCell(key), cell(first), cell(second), "", "", "", ""]);
  const fields = ["what", "key", "first", "second", "unit", "change", "share", "beyond doubt"];
  const data = [
    ...figures.map(({ key, first, second, change, share, beyondDoubt }) => [
      "figure",
      wordsCell(key),
      cell(first?.value),
      cell(second?.value),
      wordsCell((second ?? first)!.unit),
      cell(change),
      cell(share),
      beyondDoubt === null ? "" : DOUBT_WORDS[`${beyondDoubt}`],
    ]),
    ...values("input", inputs),
    ...gained.map((
      { chapter, text },
    ) => ["notice", wordsCell(chapter), "", wordsCell(text), "", "", "", ""]),
    ...lost.map((
      { chapter, text },
    ) => ["notice", wordsCell(chapter), wordsCell(text), "", "", "", "", ""]),
    ...values("provenance", provenance),
  ];
  return Papa.unparse({ fields, data }, { newline: "\n" }) + "\n";
}
