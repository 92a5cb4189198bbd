/** Fields of tubes for the tests of headers and fan. */
import { fieldPit, type HeadersInputs } from "../../lib/headers/mod.ts";
import {
  type DugField,
  type Pit,
  type PitOf,
  tubePositions,
  tubesChapter,
  type TubesInputs,
  type TubesResult,
} from "../../lib/tubes/mod.ts";
import { DEFAULTS } from "../harness/defaults.ts";

/** Air of the tests. */
export const STATE = { pressure: 95000, airTemperature: 22 };
/** A house of 24 m by 8 m. */
export const HOUSE = { length: 24, width: 8 };

/** 16 corrugated tubes of 15 m in one layer at 2 m/s. */
export const TUBES: TubesInputs = {
  ...DEFAULTS.tubes,
  tube: "corrugated-4in",
  count: 16,
  length: 15,
  spacing: 0.4,
  layers: 1,
  layerSpacing: 0.4,
  depth: 0.8,
  airFlow: 16 * 0.01634,
  slope: 0.01,
  direction: "along",
  extraLosses: 0,
};

/** Headers of 12 inches, flush. */
export const HEADERS: HeadersInputs = {
  ...DEFAULTS.headers,
  layout: "Z",
  diameter: 0.305,
  returnDiameter: 0.305,
  roughness: 1e-4,
  manning: 0.015,
  inlet: "flush",
  insertion: 0,
  groups: 1,
  taper: 1,
  junctions: "tees",
};

/** Result of the tubes chapter for the field, with changes. */
export function field(changes: Partial<TubesInputs> = {}): TubesResult {
  return tubesChapter({ ...TUBES, ...changes }, { house: HOUSE, ...STATE });
}

/** The pit of a field with one header of 0.4 m to a layer. */
export const PIT: PitOf = (field: DugField): Pit => {
  const places = tubePositions(field);
  return fieldPit({
    tubes: { positions: places, product: field.product, length: field.length },
    slope: TUBES.slope,
    headers: { diameter: 0.4, returnDiameter: 0.4, groups: field.layers },
  });
};
