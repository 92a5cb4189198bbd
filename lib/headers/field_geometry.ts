/**
 * The tube field in the ground: what drawings and quantities share.
 *
 * @module
 */
import {
  type BuriedField,
  type BuriedHeaders,
  buryHeaders,
  fieldFall,
  fieldPit,
} from "./in_ground.ts";
import type { HeadersInputs } from "./types.ts";
import type { HouseInputs } from "../house/types.ts";
import { type FootingLine, footingLine, type Pit } from "../tubes/mod.ts";
import type { TubesInputs, TubesResult } from "../tubes/types.ts";

/** What the geometry of the field follows from. */
export interface FieldInputs {
  /** house section of the study */
  readonly house: HouseInputs;
  /** tubes section of the study */
  readonly tubesInputs: TubesInputs;
  /** result of the tubes chapter */
  readonly tubes: TubesResult;
  /** headers section of the study */
  readonly headersInputs: HeadersInputs;
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
  /** every pair of headers */
  readonly headers: readonly BuriedHeaders[];
  /** pairs of headers that lie one above the other, the upper first: one of each depth */
  readonly levels: readonly BuriedHeaders[];
  /** m that the tubes fall from the supply to the return header, half of it on either side of the middle */
  readonly fall: number;
  /** the pit round them */
  readonly pit: Pit;
  /** the pit against the 45° line from the footings */
  readonly footing: FootingLine;
}

/** The field as the headers chapter takes it. */
export function buriedField({ tubes, tubesInputs, headersInputs }: FieldInputs): BuriedField {
  return { tubes, slope: tubesInputs.slope, headers: headersInputs };
}

/** Works out the field from inputs and result of the tubes chapter. */
export function fieldGeometry(inputs: FieldInputs): FieldGeometry {
  const { house, tubes, tubesInputs } = inputs;
  const along = tubesInputs.direction === "along";
  const depths = [...new Set(tubes.positions.map((position) => position.depth))].sort((a, b) =>
    a - b
  );
  const rows = depths.map((depth) =>
    tubes.positions.filter((position) => position.depth === depth).map((position) => position.x)
      .sort((a, b) => a - b)
  );
  const field = buriedField(inputs);
  const headers = buryHeaders(field);
  const pit = fieldPit(field);
  const houseAlong = along ? house.length : house.width;
  const houseAcross = along ? house.width : house.length;
  return {
    houseAlong,
    houseAcross,
    width: 2 * Math.max(...tubes.positions.map((position) => Math.abs(position.x))),
    length: tubes.length,
    layers: depths,
    row: rows.reduce((longest, one) => one.length > longest.length ? one : longest, rows[0]!),
    radius: tubes.product.outsideDiameter / 2,
    headers,
    levels: headers.filter(({ depth }, index) =>
      headers.findIndex((other) => other.depth === depth) === index
    ).toSorted((a, b) => a.depth - b.depth),
    fall: fieldFall(field),
    pit,
    footing: footingLine(pit, {
      footingDepth: house.footingDepth,
      house: { along: houseAlong, across: houseAcross },
    }),
  };
}
