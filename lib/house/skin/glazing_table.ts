/** Glazings, from `data/glazings/glazings.csv`. @module */
import Papa from "papaparse";
import glazingsText from "../../../data/glazings/glazings.csv" with { type: "text" };
import { InputError } from "../../basics/mod.ts";

/** One row of the table of glazings. */
export interface Glazing {
  /** id of the row */
  readonly id: string;
  /** name for the reader */
  readonly name: string;
  /** W/(m² K) in the winter design wind of 6.7 m/s, the sky as cold as the air */
  readonly heatTransmittance: number;
  /** sheets one behind the other */
  readonly sheets: number;
  /** of the sheet's material */
  readonly refractiveIndex: number;
  /** 1/m */
  readonly extinction: number;
  /** m of material in one sheet */
  readonly sheetThickness: number;
  /** share of thermal radiation that passes straight through, 0 to 1 */
  readonly longWaveTransmittance: number;
  /** share of the light left by bars, dirt and drops, 0 to 1 */
  readonly lightFactor: number;
  /** id of the glazing a grower would change to next: a second film, one more wall; null where none */
  readonly nextBetter: string | null;
  /** where the values come from */
  readonly source: string;
}

/** Reads a table with a header; every number must be one. */
export function readTable<Row>(
  text: string,
  file: string,
  make: (text: (column: string) => string, number: (column: string) => number) => Row,
): readonly Row[] {
  const parsed = Papa.parse<Record<string, string>>(text, { header: true, skipEmptyLines: true });
  return parsed.data.map((row, index) => {
    const location = { file, line: index + 2 };
    const cell = (column: string): string => {
      const found = row[column];
      if (found === undefined) {
        throw new InputError(`Cannot find column "${column}"`, location);
      }
      return found;
    };
    return make(cell, (column) => {
      const value = Number(cell(column));
      if (cell(column).trim() === "" || !Number.isFinite(value)) {
        throw new InputError(`Cannot read a number: found "${cell(column)}"`, {
          ...location,
          column,
        });
      }
      return value;
    });
  });
}

/** Every glazing of the table, in file order. */
export const GLAZINGS: readonly Glazing[] = readTable(
  glazingsText,
  "data/glazings/glazings.csv",
  (text, number): Glazing => ({
    id: text("id"),
    name: text("name"),
    heatTransmittance: number("heat_transmittance (W/(m2 K))"),
    sheets: number("sheets (1)"),
    refractiveIndex: number("refractive_index (1)"),
    extinction: number("extinction (1/m)"),
    sheetThickness: number("sheet_thickness (m)"),
    longWaveTransmittance: number("long_wave_transmittance (1)"),
    lightFactor: number("light_factor (1)"),
    nextBetter: text("next_better (id)") || null,
    source: text("source"),
  }),
);

/**
 * Glazing by id.
 *
 * @param id first column of `data/glazings/glazings.csv`
 * @throws {InputError} for an unknown id; the message lists the known ones
 */
export function findGlazing(id: string): Glazing {
  const found = GLAZINGS.find((glazing) => glazing.id === id);
  if (found !== undefined) return found;
  const known = GLAZINGS.map((glazing) => glazing.id).join(", ");
  throw new InputError(`Unknown glazing "${id}": known are ${known}`);
}
