/** The `tubes` section of the study file. @module */
import { choice, type Fields, id, open, type Partly, quantity, whole } from "../basics/fields.ts";
import { findTube } from "./products.ts";

/** `tubes` section of the study file, in SI. */
export interface TubesInputs {
  /** id in data/tubes */
  readonly tube: string;
  /** number of tubes */
  readonly count: number;
  /** m between the headers, one tube */
  readonly length: number;
  /** centre to centre, m */
  readonly spacing: number;
  /** number of layers of tubes */
  readonly layers: number;
  /** m between layers */
  readonly layerSpacing: number;
  /** m from the floor surface to the centre of the upper layer */
  readonly depth: number;
  /** design air flow of the whole field, m³/s */
  readonly airFlow: number;
  /** fall along the tube, m/m */
  readonly slope: number;
  /** the tubes run along or across the house */
  readonly direction: "along" | "across";
  /** further loss of one tube in velocity heads (elbows, screens), besides inlet and exit */
  readonly extraLosses: number;
}

/** The section as given: these keys may still wait for their default. */
export type TubesGiven = Partly<TubesInputs, "count" | "length" | "airFlow" | "spacing" | "layers">;

/** Keys of the section. */
export const tubesFields: Fields<TubesGiven> = {
  tube: id(findTube),
  count: open(whole),
  length: open(quantity),
  spacing: open(quantity),
  layers: open(whole),
  layerSpacing: quantity,
  depth: quantity,
  airFlow: open(quantity),
  slope: quantity,
  direction: choice("along", "across"),
  extraLosses: quantity,
};
