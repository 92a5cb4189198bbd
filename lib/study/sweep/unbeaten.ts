/** Rows of a sweep that no other row beats. @module */
import Papa from "papaparse";
import type { KnownRows } from "./row_file.ts";
import { cellsOf } from "./table.ts";
import type { FigureColumn, SweepPlan } from "./types.ts";

/** A row judged by cost, heat and the crop's hours. */
export interface JudgedRow {
  /** number from 1 */
  readonly row: number;
  /** values of the keys, as the table has them */
  readonly values: readonly string[];
  /** money of the first cost */
  readonly capital: number;
  /** kWh of heat saved in a year */
  readonly savedHeat: number;
  /** h a year in which the house without a heater is below the limit at which the crop dies */
  readonly cropHours: number;
  /** number of faults of the design that must be mended before anybody digs */
  readonly faults: number;
  /** true where no row without a fault saves as much heat for as little money, and betters one of both */
  readonly unbeatenByHeat: boolean;
  /** the same of the crop's hours */
  readonly unbeatenByHours: boolean;
}

/** Figures that rows are judged by. */
const JUDGED = {
  capital: "worth.capital",
  savedHeat: "store.savedHeat",
  cropHours: "store.hoursBelowCropLimit",
  faults: "worth.designFaults",
} as const;

/**
 * Judges the rows that have all of these figures; empty where the sweep has not.
 *
 * @param plan of the sweep
 * @param figures columns of figures
 * @param rows finished rows by number
 */
export function judgedRows(
  plan: SweepPlan,
  figures: readonly FigureColumn[],
  rows: KnownRows,
): readonly JudgedRow[] {
  const first = 1 + plan.keys.length;
  const places = Object.values(JUDGED).map((key) =>
    figures.findIndex((figure) => figure.key === key)
  );
  if (places.includes(-1)) return [];
  const all = [...rows].sort(([one], [other]) => one - other).flatMap(([row, line]) => {
    const cells = cellsOf(line);
    const texts = places.map((place) => cells[first + place]!);
    if (texts.includes("")) return [];
    const [capital, savedHeat, cropHours, faults] = texts.map(Number) as [
      number,
      number,
      number,
      number,
    ];
    return [{ row, values: cells.slice(1, first), capital, savedHeat, cropHours, faults }];
  });
  const sound = all.filter(({ faults }) => faults === 0);
  const unbeaten = (gain: (row: typeof all[number]) => number) => (one: typeof all[number]) =>
    one.faults === 0 &&
    !sound.some((other) =>
      other.capital <= one.capital && gain(other) >= gain(one) &&
      (other.capital < one.capital || gain(other) > gain(one))
    );
  const byHeat = unbeaten(({ savedHeat }) => savedHeat);
  const byHours = unbeaten(({ cropHours }) => -cropHours);
  return all.map((one) => ({
    ...one,
    unbeatenByHeat: byHeat(one),
    unbeatenByHours: byHours(one),
  }));
}

/** What the first row gives up: the unbeaten row that saves at least as much heat for least money. */
export function betterThanFirst(rows: readonly JudgedRow[]): JudgedRow | null {
  const own = rows.find(({ row }) => row === 1);
  if (own === undefined) return null;
  const better = rows.filter((one) =>
    one.unbeatenByHeat && one.row !== 1 && one.capital <= own.capital &&
    one.savedHeat >= own.savedHeat
  );
  return better.toSorted((one, other) => one.capital - other.capital)[0] ?? null;
}

/** The judged rows as CSV, by rising first cost. */
export function unbeatenText(
  plan: SweepPlan,
  figures: readonly FigureColumn[],
  rows: readonly JudgedRow[],
): string {
  const unit = (key: string) => figures.find((figure) => figure.key === key)!.unit;
  const heads = [
    "row",
    ...plan.keys.map(({ key }) => `given ${key}`),
    ...Object.values(JUDGED).map((key) => `${key} (${unit(key)})`),
    "unbeaten by cost and heat",
    "unbeaten by cost and hours",
  ];
  const word = (yes: boolean) => yes ? "yes" : "no";
  const lines = rows.toSorted((one, other) => one.capital - other.capital).map((one) => [
    one.row,
    ...one.values,
    one.capital,
    one.savedHeat,
    one.cropHours,
    one.faults,
    word(one.unbeatenByHeat),
    word(one.unbeatenByHours),
  ]);
  return `${Papa.unparse([heads, ...lines], { newline: "\n" })}\n`;
}
