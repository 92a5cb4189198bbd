/** What the tubes chapter takes and gives. @module */
import type { Notice } from "../basics/mod.ts";
import type { TubeProduct } from "./products.ts";

export type { TubesInputs } from "./fields.ts";
export type { TubeProduct } from "./products.ts";

/** Result of the tubes chapter, at the design air flow. */
export interface TubesResult {
  /** row of data/tubes */
  readonly product: TubeProduct;
  /** number of tubes */
  readonly count: number;
  /** m, one tube */
  readonly length: number;
  /** m, all tubes */
  readonly totalLength: number;
  /** inside, m */
  readonly diameter: number;
  /** centre of each tube: across the field (x, m from the field's middle) and depth (m), layer by layer */
  readonly positions: readonly { readonly x: number; readonly depth: number }[];
  /** m/s */
  readonly airSpeed: number;
  /** m³/s */
  readonly flowPerTube: number;
  /** Reynolds number */
  readonly reynolds: number;
  /** friction factor after Darcy, dimensionless */
  readonly frictionFactor: number;
  /** Pa of one tube from header to header, incl. inlet and exit */
  readonly pressureDrop: number;
  /** velocity heads of the same loss */
  readonly lossCoefficient: number;
  /** velocity heads of the inlet and of the exit within it */
  readonly inletLoss: number;
  /** velocity heads of the tube's exit */
  readonly exitLoss: number;
  /** W/(m² K) inside film, dry */
  readonly filmCoefficient: number;
  /** number of transfer units */
  readonly transferUnits: number;
  /** 0 to 1, wall at constant temperature, dry */
  readonly effectiveness: number;
  /** messages for the reader */
  readonly notices: readonly Notice[];
}
