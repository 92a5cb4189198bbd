/** What lies on the floor: mulch on the beds, paths, and what they do to heat and vapour. @module */
import coversText from "../../../data/floors/floor_covers.csv" with { type: "text" };
import { findById, readDataTable } from "../../basics/mod.ts";
import { FLOOR_FILM } from "../skin/films.ts";

/** One row of the table of floor covers. */
export interface FloorCover {
  /** id of the row */
  readonly id: string;
  /** name for the reader */
  readonly name: string;
  /** m² K/W between its top and the soil */
  readonly resistance: number;
  /** what evaporates through it over what evaporates from bare soil as wet, 0 to 1 */
  readonly evaporation: number;
  /** where the values come from */
  readonly source: string;
}

/** Every floor cover of the table, in file order. */
export const FLOOR_COVERS: readonly FloorCover[] = readDataTable(
  coversText,
  "data/floors/floor_covers.csv",
  ["id", "name", "resistance (m2 K/W)", "evaporation (1)", "source"],
).map((row): FloorCover => ({
  id: row.text("id"),
  name: row.text("name"),
  resistance: row.number("resistance (m2 K/W)"),
  evaporation: row.number("evaporation (1)"),
  source: row.text("source"),
}));

/**
 * Floor cover by id.
 *
 * @param id first column of `data/floors/floor_covers.csv`
 * @returns its resistance in m² K/W and share of evaporation, with their source
 * @throws {InputError} for an unknown id; the message lists the known ones
 */
export function findFloorCover(id: string): FloorCover {
  return findById(FLOOR_COVERS, id, "floor cover");
}

/** What lies on beds and paths. */
export interface FloorInputs {
  /** id of what lies on the beds */
  readonly bedCover: string;
  /** id of what lies on the paths */
  readonly pathCover: string;
  /** share of the floor that is paths, 0 to 1 */
  readonly pathShare: number;
}

/** Beds and paths with their share of the floor. */
function parts(inputs: FloorInputs): readonly (readonly [share: number, cover: FloorCover])[] {
  return [
    [1 - inputs.pathShare, findFloorCover(inputs.bedCover)],
    [inputs.pathShare, findFloorCover(inputs.pathCover)],
  ];
}

/**
 * Heat between what drives the floor and the soil: the floor's film and the cover in series, beds and
 * paths side by side. f' = Σ share/(1/f + R).
 *
 * Source: exact, resistances in series and side by side.
 *
 * @param inputs covers and share of paths
 * @returns W/(m² K), {@link FLOOR_FILM} where the floor is bare
 */
export function floorCoupling(inputs: FloorInputs): number {
  const bare = parts(inputs).every(([share, { resistance }]) => share <= 0 || resistance <= 0);
  if (bare) return FLOOR_FILM;
  return parts(inputs).reduce(
    (sum, [share, { resistance }]) => sum + share / (1 / FLOOR_FILM + resistance),
    0,
  );
}

/**
 * What evaporates from the floor over what would from bare soil all over.
 *
 * @param inputs covers and share of paths
 * @returns 0 to 1
 */
export function floorEvaporation(inputs: FloorInputs): number {
  return parts(inputs).reduce((sum, [share, { evaporation }]) => sum + share * evaporation, 0);
}
