/** Crops, from `data/crops/crops.csv`. @module */
import cropsText from "../../../data/crops/crops.csv" with { type: "text" };
import { InputError } from "../../basics/mod.ts";
import { readTable } from "../skin/glazing_table.ts";

/** One row of the table of crops. */
export interface Crop {
  /** id of the row */
  readonly id: string;
  /** name for the reader */
  readonly name: string;
  /** m */
  readonly leafLength: number;
  /** extinction of light in the canopy per leaf area index */
  readonly lightExtinction: number;
  /** kg/m² of leaf */
  readonly freshMass: number;
  /** share of the floor that is wet soil, 0 to 1 */
  readonly wetFloor: number;
  /** degC below which growth suffers, and below which plants die */
  readonly chillingLimit: number;
  /** degC, the crop dies below */
  readonly killingLimit: number;
  /** where the values come from */
  readonly source: string;
}

/** Every crop of the table, in file order. */
export const CROPS: readonly Crop[] = readTable(
  cropsText,
  "data/crops/crops.csv",
  (text, number): Crop => ({
    id: text("id"),
    name: text("name"),
    leafLength: number("leaf_length (m)"),
    lightExtinction: number("light_extinction (1)"),
    freshMass: number("fresh_mass_per_leaf_area (kg/m2)"),
    wetFloor: number("wet_floor (1)"),
    chillingLimit: number("chilling_limit (degC)"),
    killingLimit: number("killing_limit (degC)"),
    source: text("source"),
  }),
);

/**
 * Crop by id.
 *
 * @param id first column of `data/crops/crops.csv`
 * @throws {InputError} for an unknown id; the message lists the known ones
 */
export function findCrop(id: string): Crop {
  const found = CROPS.find((crop) => crop.id === id);
  if (found !== undefined) return found;
  const known = CROPS.map((crop) => crop.id).join(", ");
  throw new InputError(`Unknown crop "${id}": known are ${known}`);
}
