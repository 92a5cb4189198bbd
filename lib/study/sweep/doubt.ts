/** What a sample of a study says: bands of its figures, and what moves each most. @module */
import Papa from "papaparse";
import { type SampledEffects, sampledEffects } from "../../worth/mod.ts";
import { samplePoints } from "./rows.ts";
import type { KnownRows } from "./row_file.ts";
import { cellsOf } from "./table.ts";
import type { FigureColumn, SweepPlan } from "./types.ts";

/** One figure of a sampled study. */
export interface FigureDoubt extends SampledEffects {
  /** the figure */
  readonly figure: FigureColumn;
  /** count of samples that have it */
  readonly count: number;
}

/** Samples that a figure must have. */
const LEAST_SAMPLES = 8;

/**
 * Bands and shares of all figures that are numbers.
 *
 * @param plan a sweep of the form sample
 * @param figures columns of figures
 * @param rows finished rows by number
 */
export function sampledDoubt(
  plan: SweepPlan,
  figures: readonly FigureColumn[],
  rows: KnownRows,
): readonly FigureDoubt[] {
  const points = samplePoints(plan);
  const table = [...rows].sort(([one], [other]) => one - other)
    .map(([row, line]) => ({ point: points[row - 1]!, cells: cellsOf(line) }));
  return figures.flatMap((figure, place) => {
    if (figure.unit === "text" || figure.unit === "date") return [];
    const column = 1 + plan.keys.length + place;
    const sound = table.filter(({ cells }) => cells[column] !== "");
    if (sound.length < LEAST_SAMPLES) return [];
    const found = sampledEffects(
      sound.map(({ point }) => point),
      sound.map(({ cells }) => Number(cells[column])),
    );
    return [{ figure, count: sound.length, ...found }];
  });
}

/** The table of {@link sampledDoubt} as CSV: a row for each figure, two columns for each key. */
export function doubtText(plan: SweepPlan, doubts: readonly FigureDoubt[]): string {
  const heads = plan.keys.flatMap(({ key }) => [
    `${key} alone (share)`,
    `${key} with others (share)`,
  ]);
  const round = (value: number) => Number(value.toPrecision(6));
  const rows = doubts.map(({ figure, count, band, effects, foretold }): unknown[] => [
    figure.key,
    figure.unit,
    figure.unchanged,
    round(band[0]),
    round(band[1]),
    count,
    round(foretold),
    ...plan.keys.flatMap((_, place): (string | number)[] => {
      const share = effects?.[place];
      return share === undefined ? ["", ""] : [round(share.first), round(share.total)];
    }),
  ]);
  const fixed = ["figure", "unit", "as it is", "low", "high", "samples", "foretold (share)"];
  return `${Papa.unparse([[...fixed, ...heads], ...rows], { newline: "\n" })}\n`;
}

/** The keys that move a figure most, the strongest first; none where the sample does not tell. */
export function strongestKeys(plan: SweepPlan, { effects }: FigureDoubt): readonly {
  /** dotted, as the file writes it */
  readonly key: string;
  /** share of the variance with all others together */
  readonly total: number;
}[] {
  return (effects ?? [])
    .map(({ total }, place) => ({ key: plan.keys[place]!.key, total }))
    .toSorted((one, other) => other.total - one.total);
}
