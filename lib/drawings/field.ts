/**
 * The tube field in the ground: what every drawing and the quantities share.
 *
 * @module
 */
import { mean } from "d3-array";
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
  /** fans side by side, one riser each */
  readonly fans: number;
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
  /** one pair of headers to each layer, or one pair to all of them */
  readonly headers: readonly HeaderLevel[];
  /** false where the headers of two layers would run into each other */
  readonly headersFit: boolean;
  /** m that the tubes fall from the supply to the return header, half of it on either side of the middle */
  readonly fall: number;
  /** pit at its bottom: depth at the middle, and at the low end of the tubes */
  readonly pit: {
    readonly width: number;
    readonly length: number;
    readonly depth: number;
    readonly lowEnd: number;
  };
}

/** Where a pair of headers lies. */
export interface HeaderLevel {
  /** depth of the header's centre at the middle of the fall, m */
  readonly depth: number;
  /** m that the tubes enter below the header's centre; negative above it */
  readonly offCentre: number;
}

/** m between headers that lie above each other (common practice, no source). */
const HEADER_GAP = 0.015;
/** share of the header's radius by which tubes may enter off its centre (common practice, no source) */
const MOST_OFF_CENTRE = 0.35;

/**
 * Depths of the headers. Headers wider than the step between the layers are spread apart, so that
 * the tubes enter them a little off the centre.
 */
function headerLevels(
  layers: readonly number[],
  headers: HeadersInputs,
): { readonly headers: readonly HeaderLevel[]; readonly headersFit: boolean } {
  const middle = mean(layers)!;
  if (headers.groups < layers.length) {
    return { headers: [{ depth: middle, offCentre: 0 }], headersFit: true };
  }
  const diameter = Math.max(headers.diameter, headers.returnDiameter);
  const step = layers.length > 1 ? layers[1]! - layers[0]! : Infinity;
  const lacking = Math.max(0, diameter + HEADER_GAP - step);
  const outermost = lacking * (layers.length - 1) / 2;
  const narrow = Math.min(headers.diameter, headers.returnDiameter) / 2;
  const headersFit = outermost <= MOST_OFF_CENTRE * narrow;
  return {
    headersFit,
    headers: layers.map((depth, index) => {
      const shift = headersFit ? lacking * (index - (layers.length - 1) / 2) : 0;
      return { depth: depth + shift, offCentre: -shift };
    }),
  };
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
  const levels = headerLevels(depths, headersInputs);
  const headerRadius = Math.max(headersInputs.diameter, headersInputs.returnDiameter) / 2;
  const fall = tubesInputs.slope * tubes.length;
  const depth = allowance("bedding") +
    Math.max(depths.at(-1)! + radius, levels.headers.at(-1)!.depth + headerRadius);
  return {
    houseAlong: along ? house.length : house.width,
    houseAcross: along ? house.width : house.length,
    width: 2 * reach,
    length: tubes.length,
    layers: depths,
    row,
    radius,
    ...levels,
    fall,
    pit: {
      width: 2 * (reach + radius + allowance("working margin")),
      length: tubes.length + 2 * (headerRadius + allowance("header space")),
      depth,
      lowEnd: depth + fall / 2,
    },
  };
}

/**
 * Room between the pit's lower edge, at the low end of the tubes, and the 45° line from the footing's lower edge, m; negative
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
  return sides - Math.max(0, field.pit.lowEnd - footing);
}
