/** Typical soils by texture, from `data/soils/soils.csv`. @module */
import soilsText from "../../data/soils/soils.csv" with { type: "text" };
import { InputError, readDataTable } from "../basics/mod.ts";
import type { DataRow } from "../basics/mod.ts";
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
  /** Côté–Konrad κ, unfrozen, dimensionless */
  readonly ratioUnfrozen: number;
  /** Côté–Konrad κ, frozen, dimensionless */
  readonly ratioFrozen: number;
  /** Côté–Konrad χ, W/(m K) */
  readonly dryFactor: number;
  /** Côté–Konrad η, dimensionless */
  readonly dryExponent: number;
  /** K below 0 °C over which the soil water freezes */
  readonly freezingRange: number;
  /** where the numbers come from */
  readonly source: string;
}

const FILE = "data/soils/soils.csv";
const COLUMNS = {
  texture: "texture",
  dryDensity: "dry_density (kg/m3)",
  moisture: "moisture (m3/m3)",
  quartz: "quartz (1)",
  grain: "grain",
  solidDensity: "solid_density (kg/m3)",
  solidConductivity: "solid_conductivity (W/(m K))",
  solidHeatCapacity: "solid_heat_capacity (J/(m3 K))",
  ratioUnfrozen: "ratio_unfrozen (1)",
  ratioFrozen: "ratio_frozen (1)",
  dryFactor: "dry_factor (W/(m K))",
  dryExponent: "dry_exponent (1)",
  freezingRange: "freezing_range (K)",
  source: "source",
} as const;

function readRow(row: DataRow): SoilRow {
  return {
    texture: row.text(COLUMNS.texture) as SoilTexture,
    dryDensity: row.number(COLUMNS.dryDensity),
    moisture: row.number(COLUMNS.moisture),
    quartz: row.number(COLUMNS.quartz),
    grain: row.text(COLUMNS.grain) as SoilGrain,
    solidDensity: row.number(COLUMNS.solidDensity),
    solidConductivity: row.numberOrNull(COLUMNS.solidConductivity),
    solidHeatCapacity: row.number(COLUMNS.solidHeatCapacity),
    ratioUnfrozen: row.number(COLUMNS.ratioUnfrozen),
    ratioFrozen: row.number(COLUMNS.ratioFrozen),
    dryFactor: row.number(COLUMNS.dryFactor),
    dryExponent: row.number(COLUMNS.dryExponent),
    freezingRange: row.number(COLUMNS.freezingRange),
    source: row.text(COLUMNS.source),
  };
}

/** Every soil of the table, in file order. */
export const SOILS: readonly SoilRow[] = readDataTable(soilsText, FILE, Object.values(COLUMNS))
  .map(readRow);

/**
 * Row of a soil texture.
 *
 * @param texture name in the first column of `data/soils/soils.csv`
 * @returns its grain, densities, constants of conductivity and heat capacity, with their source
 * @throws {InputError} for a texture that is not in the table
 */
export function findSoil(texture: string): SoilRow {
  const row = SOILS.find((soil) => soil.texture === texture);
  if (row === undefined) {
    const known = SOILS.map((soil) => soil.texture).join(", ");
    throw new InputError(`Unknown soil texture "${texture}": the known ones are ${known}`);
  }
  return row;
}
