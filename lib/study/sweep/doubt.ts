/** What a sample of a study says: bands of its figures, and what moves each most. @module */
import Papa from "papaparse";
import { sampledEffects } from "../../worth/mod.ts";
import { samplePoints } from "./rows.ts";
import type { FigureDoubt } from "./figure_doubt.ts";
import type { KnownRows } from "./row_file.ts";
import { cellsOf } from "./table.ts";
import { drawnWinters, type WinterValues, withWeather } from "./weather_doubt.ts";
import type { FigureColumn, SweepPlan } from "./types.ts";

/** Samples that a figure must have. */
const LEAST_SAMPLES = 8;

/**
 * Bands and shares of all figures that are numbers.
 *
 * @param plan a sweep of the form sample
 * @param figures columns of figures
 * @param rows finished rows by number
 * @param winters values of winters, of which each sample draws one; the weather is no doubt unless given
 */
export function sampledDoubt(
  plan: SweepPlan,
  figures: readonly FigureColumn[],
  rows: KnownRows,
  winters?: WinterValues,
): readonly FigureDoubt[] {
  const points = samplePoints(plan);
  const table = [...rows].sort(([one], [other]) => one - other)
    .map(([row, line]) => ({ row, point: points[row - 1]!, cells: cellsOf(line) }));
  return figures.flatMap((figure, place) => {
    if (figure.unit === "text" || figure.unit === "date") return [];
    const column = 1 + plan.keys.length + place;
    const sound = table.filter(({ cells }) => cells[column] !== "");
    if (sound.length < LEAST_SAMPLES) return [];
    const values = sound.map(({ row, cells }) => ({ row, value: Number(cells[column]) }));
    const found = sampledEffects(
      sound.map(({ point }) => point),
      values.map(({ value }) => value),
    );
    const doubt = { figure, count: sound.length, ...found, weather: null };
    const known = winters?.get(figure.key);
    if (known === undefined) return [doubt];
    return [withWeather(doubt, values, {
      winters: known,
      drawn: drawnWinters(plan.rows, known.length, plan.seed),
    })];
  });
}

/** The table of {@link sampledDoubt} as CSV: a row for each figure, two columns for each key, one for the weather. */
export function doubtText(plan: SweepPlan, doubts: readonly FigureDoubt[]): string {
  const heads = plan.keys.flatMap(({ key }) => [
    `${key} alone (share)`,
    `${key} with others (share)`,
  ]);
  const round = (value: number) => Number(value.toPrecision(6));
  const rows = doubts.map(({ figure, count, band, effects, foretold, weather }): unknown[] => [
    figure.key,
    figure.unit,
    figure.unchanged,
    round(band[0]),
    round(band[1]),
    count,
    round(foretold),
    weather === null ? "" : round(weather),
    ...plan.keys.flatMap((_, place): (string | number)[] => {
      const share = effects?.[place];
      return share === undefined ? ["", ""] : [round(share.first), round(share.total)];
    }),
  ]);
  const fixed = [
    "figure",
    "unit",
    "as it is",
    "low",
    "high",
    "samples",
    "foretold (share)",
    "weather (share)",
  ];
  return `${Papa.unparse([[...fixed, ...heads], ...rows], { newline: "\n" })}\n`;
}

/** What moves a figure most, the strongest first; of the keys none where the sample does not tell. */
export function strongestKeys(plan: SweepPlan, { effects, weather }: FigureDoubt): readonly {
  /** dotted, as the file writes it; "the weather" for the winters */
  readonly key: string;
  /** share of the variance with all others together */
  readonly total: number;
}[] {
  const keys = (effects ?? []).map(({ total }, place) => ({ key: plan.keys[place]!.key, total }));
  return [...keys, ...(weather === null ? [] : [{ key: "the weather", total: weather }])]
    .toSorted((one, other) => other.total - one.total);
}
