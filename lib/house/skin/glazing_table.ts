/** Glazings, from `data/glazings/glazings.csv`. @module */
import glazingsText from "../../../data/glazings/glazings.csv" with { type: "text" };
import { findById, readDataTable } from "../../basics/mod.ts";

/** One row of the table of glazings. */
export interface Glazing {
  /** id of the row */
  readonly id: string;
  /** name for the reader */
  readonly name: string;
  /** W/(m² K) in the winter design wind of 6.7 m/s, the sky as cold as the air */
  readonly heatTransmittance: number;
  /** number of sheets one behind the other */
  readonly sheets: number;
  /** refractive index of the sheet's material */
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

/** Every glazing of the table, in file order. */
export const GLAZINGS: readonly Glazing[] = readDataTable(
  glazingsText,
  "data/glazings/glazings.csv",
  [
    "id",
    "name",
    "heat_transmittance (W/(m2 K))",
    "sheets (1)",
    "refractive_index (1)",
    "extinction (1/m)",
    "sheet_thickness (m)",
    "long_wave_transmittance (1)",
    "light_factor (1)",
    "next_better (id)",
    "source",
  ],
).map((row): Glazing => ({
  id: row.text("id"),
  name: row.text("name"),
  heatTransmittance: row.number("heat_transmittance (W/(m2 K))"),
  sheets: row.number("sheets (1)"),
  refractiveIndex: row.number("refractive_index (1)"),
  extinction: row.number("extinction (1/m)"),
  sheetThickness: row.number("sheet_thickness (m)"),
  longWaveTransmittance: row.number("long_wave_transmittance (1)"),
  lightFactor: row.number("light_factor (1)"),
  nextBetter: row.text("next_better (id)") || null,
  source: row.text("source"),
}));

/**
 * Glazing by id.
 *
 * @param id first column of `data/glazings/glazings.csv`
 * @returns heat transmittance in W/(m² K), optics of its sheets, and their source
 * @throws {InputError} for an unknown id; the message lists the known ones
 */
export function findGlazing(id: string): Glazing {
  return findById(GLAZINGS, id, "glazing");
}
