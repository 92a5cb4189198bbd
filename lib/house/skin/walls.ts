/** Solid walls and what they are made of, from `data/walls`. @module */
import materialsText from "../../../data/walls/materials.csv" with { type: "text" };
import wallsText from "../../../data/walls/walls.csv" with { type: "text" };
import { findById, InputError, readDataTable } from "../../basics/mod.ts";

/**
 * m² K/W of air at the inside and the outside of a wall, horizontal heat flow. ISO 6946
 * [iso-6946-2017].
 */
export const WALL_FILMS = { inside: 0.13, outside: 0.04 } as const;

/** A material. */
export interface WallMaterial {
  /** id of the row */
  readonly id: string;
  /** name for the reader */
  readonly name: string;
  /** W/(m K) */
  readonly conductivity: number;
  /** where the value comes from */
  readonly source: string;
}

/** One layer of a wall. */
export interface WallLayer {
  /** id in `data/walls/materials.csv` */
  readonly material: string;
  /** m */
  readonly thickness: number;
}

/** A wall with its layers from inside to outside. */
export interface Wall {
  /** id of the row */
  readonly id: string;
  /** name for the reader */
  readonly name: string;
  /** from inside to outside */
  readonly layers: readonly WallLayer[];
  /** W/(m² K), films on both sides */
  readonly heatTransmittance: number;
  /** where the make-up comes from */
  readonly source: string;
}

/** Every material of the table, in file order. */
export const WALL_MATERIALS: readonly WallMaterial[] = readDataTable(
  materialsText,
  "data/walls/materials.csv",
  [
    "id",
    "name",
    "conductivity (W/(m K))",
    "source",
  ],
).map((row): WallMaterial => ({
  id: row.text("id"),
  name: row.text("name"),
  conductivity: row.number("conductivity (W/(m K))"),
  source: row.text("source"),
}));

/**
 * Resistance of a layer, thickness over conductivity.
 *
 * @param layer material and thickness
 * @returns m² K/W
 * @throws {InputError} for an unknown material
 */
export function layerResistance(layer: WallLayer): number {
  return layer.thickness / findById(WALL_MATERIALS, layer.material, "wall material").conductivity;
}

/**
 * Heat transmittance of a wall of even layers. U = 1/(R_si + Σ d/λ + R_se).
 *
 * Source: ISO 6946 [iso-6946-2017]. Studs are in the material's conductivity.
 *
 * @param layers from inside to outside
 * @returns W/(m² K)
 * @example
 * ```ts
 * import { layersTransmittance } from "winterground/house/mod.ts";
 * const found = layersTransmittance([{ material: "concrete", thickness: 0.175 }]);
 * if (Math.abs(found - 1 / (0.13 + 0.1 + 0.04)) > 1e-9) throw new Error(`got ${found}`);
 * ```
 */
export function layersTransmittance(layers: readonly WallLayer[]): number {
  const resistance = layers.reduce((sum, layer) => sum + layerResistance(layer), 0);
  return 1 / (WALL_FILMS.inside + resistance + WALL_FILMS.outside);
}

function readLayers(text: string): readonly WallLayer[] {
  return text.split(";").map((piece) => {
    const [material = "", thickness = ""] = piece.split(":").map((part) => part.trim());
    if (!(Number(thickness) > 0)) {
      throw new InputError(`Cannot read the wall layer "${piece.trim()}"`, {
        file: "data/walls/walls.csv",
      });
    }
    return { material, thickness: Number(thickness) };
  });
}

/** Every wall of the table, in file order. */
export const WALLS: readonly Wall[] = readDataTable(wallsText, "data/walls/walls.csv", [
  "id",
  "name",
  "layers (material: m)",
  "source",
]).map((row): Wall => {
  const layers = readLayers(row.text("layers (material: m)"));
  return {
    id: row.text("id"),
    name: row.text("name"),
    layers,
    heatTransmittance: layersTransmittance(layers),
    source: row.text("source"),
  };
});

/**
 * Wall by id.
 *
 * @param id first column of `data/walls/walls.csv`
 * @returns its layers, thickness in m, with their source
 * @throws {InputError} for an unknown id; the message lists the known ones
 */
export function findWall(id: string): Wall {
  return findById(WALLS, id, "wall");
}
