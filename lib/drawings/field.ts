/**
 * The tube field in the ground: what every drawing and the quantities share.
 *
 * @module
 */
import type { HeadersInputs } from "../headers/types.ts";
import type { HouseInputs } from "../house/types.ts";
import type { TubesInputs, TubesResult } from "../tubes/types.ts";
import { allowance } from "./notes.ts";

/** What the drawings need of a study. */
export interface DrawingInputs {
  /** title of the study */
  readonly title: string;
  /** house section of the study */
  readonly house: HouseInputs;
  /** tubes section of the study */
  readonly tubesInputs: TubesInputs;
  /** result of the tubes chapter */
  readonly tubes: TubesResult;
  /** headers section of the study */
  readonly headersInputs: HeadersInputs;
  /** inside diameter of the riser, m */
  readonly riserDiameter: number;
  /** depth of the undisturbed frost, m */
  readonly frostDepth: number;
  /** highest water table below the floor, m; null where unknown */
  readonly waterTableDepth: number | null;
}

/** Geometry of the buried field, m. */
export interface FieldGeometry {
  /** house along the tubes and across them */
  readonly houseAlong: number;
  /** house size across the tubes, m */
  readonly houseAcross: number;
  /** between the outer tube centres */
  readonly width: number;
  /** between the header centres */
  readonly length: number;
  /** depths of the layers, upper first */
  readonly layers: readonly number[];
  /** tube centres of the fullest layer, from the field's middle */
  readonly row: readonly number[];
  /** outside radius of a tube */
  readonly radius: number;
  /** pit at its bottom */
  readonly pit: { readonly width: number; readonly length: number; readonly depth: number };
}

/** Works out the field from inputs and result of the tubes chapter. */
export function fieldGeometry(inputs: DrawingInputs): FieldGeometry {
  const { house, tubes, tubesInputs, headersInputs } = inputs;
  const along = tubesInputs.direction === "along";
  const radius = tubes.product.outsideDiameter / 2;
  const depths = [...new Set(tubes.positions.map((position) => position.depth))].sort((a, b) =>
    a - b
  );
  const rows = depths.map((depth) =>
    tubes.positions.filter((position) => position.depth === depth).map((position) => position.x)
      .sort((a, b) => a - b)
  );
  const row = rows.reduce((longest, one) => one.length > longest.length ? one : longest, rows[0]!);
  const reach = Math.max(...tubes.positions.map((position) => Math.abs(position.x)));
  const headerRadius = Math.max(headersInputs.diameter, headersInputs.returnDiameter) / 2;
  return {
    houseAlong: along ? house.length : house.width,
    houseAcross: along ? house.width : house.length,
    width: 2 * reach,
    length: tubes.length,
    layers: depths,
    row,
    radius,
    pit: {
      width: 2 * (reach + radius + allowance("working margin")),
      length: tubes.length + 2 * (headerRadius + allowance("header space")),
      depth: depths.at(-1)! + Math.max(radius, headerRadius) + allowance("bedding"),
    },
  };
}

/**
 * Room between the pit's lower edge and the 45° line from the footing's lower edge, m; negative
 * where the pit cuts the line.
 *
 * Common practice, no source; flatter lines are asked for in weak soils.
 */
export function footingClearance(inputs: DrawingInputs, field: FieldGeometry): number {
  const footing = inputs.house.footingDepth;
  const sides = Math.min(
    (field.houseAcross - field.pit.width) / 2,
    (field.houseAlong - field.pit.length) / 2,
  );
  return sides - Math.max(0, field.pit.depth - footing);
}
