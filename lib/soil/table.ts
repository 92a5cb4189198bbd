/** Typical soils by texture, from `data/soils/soils.csv`. @module */
import Papa from "papaparse";
import soilsText from "../../data/soils/soils.csv" with { type: "text" };
import { InputError } from "../basics/mod.ts";
import type { SoilTexture } from "./types.ts";

/** Grain class that picks the branch of the conductivity models. */
export type SoilGrain = "coarse" | "fine" | "organic";

/** One row of the table of soils. */
export interface SoilRow {
  /** name the study file uses */
  readonly texture: SoilTexture;
  /** kg/m³ of dry soil in place, typical */
  readonly dryDensity: number;
  /** m³/m³, typical below the roots */
  readonly moisture: number;
  /** share of the solids, typical */
  readonly quartz: number;
  /** class of the conductivity models */
  readonly grain: SoilGrain;
  /** kg/m³ of the solids */
  readonly solidDensity: number;
  /** W/(m K) of the solids; null where it follows from the quartz share */
  readonly solidConductivity: number | null;
  /** J/(m³ K) of the solids */
  readonly solidHeatCapacity: number;
  /** Côté–Konrad κ, unfrozen */
  readonly ratioUnfrozen: number;
  /** Côté–Konrad κ, frozen */
  readonly ratioFrozen: number;
  /** Côté–Konrad χ, W/(m K) */
  readonly dryFactor: number;
  /** Côté–Konrad η */
  readonly dryExponent: number;
  /** K below 0 °C over which the soil water freezes */
  readonly freezingRange: number;
  /** where the numbers come from */
  readonly source: string;
}

function readRow(row: Record<string, string>): SoilRow {
  const number = (column: string): number => {
    const value = Number(row[column]);
    if (row[column] === undefined || row[column] === "" || !Number.isFinite(value)) {
      throw new InputError(`Cannot read column "${column}": found "${row[column] ?? ""}"`, {
        file: "data/soils/soils.csv",
      });
    }
    return value;
  };
  const solidConductivity = row["solid_conductivity (W/(m K))"];
  return {
    texture: row["texture"] as SoilTexture,
    dryDensity: number("dry_density (kg/m3)"),
    moisture: number("moisture (m3/m3)"),
    quartz: number("quartz (1)"),
    grain: row["grain"] as SoilGrain,
    solidDensity: number("solid_density (kg/m3)"),
    solidConductivity: solidConductivity ? Number(solidConductivity) : null,
    solidHeatCapacity: number("solid_heat_capacity (J/(m3 K))"),
    ratioUnfrozen: number("ratio_unfrozen (1)"),
    ratioFrozen: number("ratio_frozen (1)"),
    dryFactor: number("dry_factor (W/(m K))"),
    dryExponent: number("dry_exponent (1)"),
    freezingRange: number("freezing_range (K)"),
    source: row["source"] ?? "",
  };
}

/** Every soil of the table, in file order. */
export const SOILS: readonly SoilRow[] = Papa.parse<Record<string, string>>(soilsText, {
  header: true,
  skipEmptyLines: true,
}).data.map(readRow);

/**
 * Row of a soil texture.
 *
 * @param texture name in the first column of `data/soils/soils.csv`
 * @throws {InputError} for a texture that is not in the table
 */
export function findSoil(texture: string): SoilRow {
  const row = SOILS.find((soil) => soil.texture === texture);
  if (row === undefined) {
    const known = SOILS.map((soil) => soil.texture).join(", ");
    throw new InputError(`Unknown soil texture "${texture}": known are ${known}`);
  }
  return row;
}
