/** What the tubes chapter takes and gives. @module */
import type { Notice } from "../basics/mod.ts";

export type { TubesInputs } from "./fields.ts";

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
  /** Manning n for corrugated, null for smooth */
  readonly manning: number | null;
  /** m, sand roughness for smooth, null for corrugated */
  readonly roughness: number | null;
  /** true where water can leave */
  readonly perforated: boolean;
  /** where the values come from */
  readonly source: string;
}

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
  /** Darcy */
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
