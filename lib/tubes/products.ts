/**
 * The table of tubes.
 *
 * @module
 */
import tableText from "../../data/tubes/tubes.csv" with { type: "text" };
import { findById, InputError, readDataTable } from "../basics/mod.ts";

/** A row of data/tubes. */
export interface TubeProduct {
  /** id of the row */
  readonly id: string;
  /** name for the reader */
  readonly name: string;
  /** m */
  readonly insideDiameter: number;
  /** m */
  readonly outsideDiameter: number;
  /** corrugated or smooth */
  readonly wall: "corrugated" | "smooth";
  /** Manning n for corrugated, s/m^(1/3); null for smooth */
  readonly manning: number | null;
  /** m, sand roughness for smooth, null for corrugated */
  readonly roughness: number | null;
  /** true where water can leave */
  readonly perforated: boolean;
  /** where the values come from */
  readonly source: string;
}

const COLUMNS = [
  "id",
  "name",
  "inside_diameter_m",
  "outside_diameter_m",
  "wall",
  "manning_n_s_per_m1_3",
  "roughness_m",
  "perforated",
  "source",
] as const;

/**
 * Reads a table of tubes in the layout of data/tubes/tubes.csv.
 *
 * @param content CSV text
 * @param file name shown in messages
 * @returns the tubes
 * @throws {InputError} with file and line where a row makes no sense
 */
export function readTubes(content: string, file: string): readonly TubeProduct[] {
  return readDataTable(content, file, COLUMNS).map((row) => {
    const wall = row.text("wall");
    const fail = (message: string, column: string): never => {
      throw new InputError(message, { file, line: row.line, column });
    };
    if (wall !== "corrugated" && wall !== "smooth") {
      return fail(`Cannot use the wall "${wall}": expected corrugated or smooth`, "wall");
    }
    const manning = row.numberOrNull("manning_n_s_per_m1_3");
    const roughness = row.numberOrNull("roughness_m");
    if (wall === "corrugated" && !(manning !== null && manning > 0)) {
      return fail("A corrugated tube needs a Manning n", "manning_n_s_per_m1_3");
    }
    if (wall === "smooth" && !(roughness !== null && roughness >= 0)) {
      return fail("A smooth tube needs a roughness", "roughness_m");
    }
    const insideDiameter = row.number("inside_diameter_m");
    const outsideDiameter = row.number("outside_diameter_m");
    if (!(insideDiameter > 0 && outsideDiameter > insideDiameter)) {
      return fail(
        "Cannot use the diameters: expected outside > inside > 0",
        "inside_diameter_m",
      );
    }
    return {
      id: row.text("id"),
      name: row.text("name"),
      insideDiameter,
      outsideDiameter,
      wall,
      manning: wall === "corrugated" ? manning : null,
      roughness: wall === "smooth" ? roughness : null,
      perforated: row.text("perforated") === "yes",
      source: row.text("source"),
    };
  });
}

/** All tubes of the table that comes with the library. */
export const TUBES: readonly TubeProduct[] = readTubes(tableText, "data/tubes/tubes.csv");

/**
 * Finds a tube by its id.
 *
 * @param id id in data/tubes/tubes.csv
 * @returns the tube
 * @throws {InputError} listing the known ids
 */
export function findTube(id: string): TubeProduct {
  return findById(TUBES, id, "tube");
}
