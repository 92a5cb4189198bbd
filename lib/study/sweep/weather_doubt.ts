/** The weather among the doubts of a sampled study: each sample draws a winter. @module */
import { ascending, quantileSorted, variance } from "d3-array";
import Papa from "papaparse";
import { readDataTable } from "../../basics/mod.ts";
import type { PairedWinter } from "../../store/mod.ts";
import { latinHypercube } from "../../worth/mod.ts";
import type { FigureDoubt } from "./figure_doubt.ts";

/** Figures that single winters have, by their key. */
const OF_WINTER: Readonly<Record<string, (winter: PairedWinter) => number>> = {
  "store.savedHeat": ({ withStore, without }) => without.backupHeat - withStore.backupHeat,
  "store.backupHeat": ({ withStore }) => withStore.backupHeat,
  "store.coldestHour": ({ withStore }) => withStore.coldestHour,
  "house.coldestHourNoStore": ({ without }) => without.coldestHour,
};

/** Values of each figure by winter, in the unit of the figure. */
export type WinterValues = ReadonlyMap<string, readonly number[]>;

/** What single winters say of the figures. */
export function winterValues(winters: readonly PairedWinter[]): WinterValues {
  return new Map(Object.entries(OF_WINTER).map(([key, value]) => [key, winters.map(value)]));
}

/** The values as CSV, a row for each winter. */
export function winterValuesText(values: WinterValues): string {
  const keys = [...values.keys()];
  const count = values.get(keys[0]!)!.length;
  const rows = Array.from({ length: count }, (_, winter) => [
    winter + 1,
    ...keys.map((key) => values.get(key)![winter]!),
  ]);
  return `${Papa.unparse([["winter", ...keys], ...rows], { newline: "\n" })}\n`;
}

/**
 * Reads what {@link winterValuesText} wrote.
 *
 * @param text of the file
 * @param file named in messages
 * @throws {InputError} where it is damaged
 */
export function readWinterValues(text: string, file: string): WinterValues {
  const keys = Object.keys(OF_WINTER);
  const rows = readDataTable(text, file, keys);
  return new Map(keys.map((key) => [key, rows.map((row) => row.number(key))]));
}

/**
 * The winter of each sample, by its key: the same seed and sample give the same winter, and all winters
 * come equally often.
 *
 * @param samples count of samples
 * @param winters count of winters
 * @param seed of the sweep
 * @returns places of winters from 0
 */
export function drawnWinters(samples: number, winters: number, seed: number): readonly number[] {
  return latinHypercube(samples, 1, seed).map(([share]) => Math.floor(share! * winters));
}

/**
 * Adds the weather to a figure's doubt. Each sample's value is moved by how far its winter lies from the
 * year of the study as it is; what soil and house do in a winter is taken to be what they do in that
 * year. So the weather's share alone is also its share with the others, and those of the others shrink
 * in proportion.
 *
 * @param doubt of the samples, all in the year of the study
 * @param values of the figure, a sample each with the number of its row
 * @param asked values of the winters, and which of them each row draws, by its number from 1
 */
export function withWeather(
  doubt: FigureDoubt,
  values: readonly { readonly row: number; readonly value: number }[],
  { winters, drawn }: { readonly winters: readonly number[]; readonly drawn: readonly number[] },
): FigureDoubt {
  const { figure: { unchanged } } = doubt;
  if (typeof unchanged !== "number") return doubt;
  const moved = values.map(({ row, value }) => value + winters[drawn[row - 1]!]! - unchanged).sort(
    ascending,
  );
  const [others, weather] = [variance(values, ({ value }) => value)!, variance(winters)!];
  const all = others + weather;
  const rest = all > 0 ? others / all : 0;
  return {
    ...doubt,
    band: [quantileSorted(moved, 0.025)!, quantileSorted(moved, 0.975)!],
    effects: doubt.effects?.map(({ first, total }) => ({
      first: rest * first,
      total: rest * total,
    })) ?? null,
    weather: all > 0 ? weather / all : 0,
  };
}
