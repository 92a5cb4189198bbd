/** Crops, from `data/crops/crops.csv`. @module */
import cropsText from "../../../data/crops/crops.csv" with { type: "text" };
import { type DataRow, findById, readDataTable } from "../../basics/mod.ts";

/** Soil temperatures in which seeds come up, degC. */
export interface Sprouting {
  /** below this next to nothing comes up */
  readonly least: number;
  /** from here to {@link Sprouting.high} it comes up soon and evenly */
  readonly low: number;
  /** above this less and less comes up */
  readonly high: number;
}

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
  /** degC below which growth stops */
  readonly growthLimit: number;
  /** degC below which hardened plants are damaged: chilling or frost injury */
  readonly damageLimit: number;
  /** degC below which they die */
  readonly killingLimit: number;
  /** soil in which it is sown; null for what is not sown in place */
  readonly sprouting: Sprouting | null;
  /** where the values come from */
  readonly source: string;
}

/** degC: limits below any weather belong to empty beds. */
export const NO_CROP = -50;

const SPROUTING = [
  "sprouting_least (degC)",
  "sprouting_low (degC)",
  "sprouting_high (degC)",
] as const;

function sproutingOf(row: DataRow): Sprouting | null {
  const [least, low, high] = SPROUTING.map((column) => row.numberOrNull(column));
  return least === null ? null : { least: least!, low: low!, high: high! };
}

/** Every crop of the table, in file order. */
export const CROPS: readonly Crop[] = readDataTable(cropsText, "data/crops/crops.csv", [
  "id",
  "name",
  "leaf_length (m)",
  "light_extinction (1)",
  "fresh_mass_per_leaf_area (kg/m2)",
  "wet_floor (1)",
  "growth_limit (degC)",
  "damage_limit (degC)",
  "killing_limit (degC)",
  ...SPROUTING,
  "source",
]).map((row): Crop => ({
  id: row.text("id"),
  name: row.text("name"),
  leafLength: row.number("leaf_length (m)"),
  lightExtinction: row.number("light_extinction (1)"),
  freshMass: row.number("fresh_mass_per_leaf_area (kg/m2)"),
  wetFloor: row.number("wet_floor (1)"),
  growthLimit: row.number("growth_limit (degC)"),
  damageLimit: row.number("damage_limit (degC)"),
  killingLimit: row.number("killing_limit (degC)"),
  sprouting: sproutingOf(row),
  source: row.text("source"),
}));

/**
 * Crop by id.
 *
 * @param id first column of `data/crops/crops.csv`
 * @returns its limits in degC, leaf length in m and mass, with their source
 * @throws {InputError} for an unknown id; the message lists the known ones
 */
export function findCrop(id: string): Crop {
  return findById(CROPS, id, "crop");
}
