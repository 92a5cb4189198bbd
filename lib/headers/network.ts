/**
 * What a network of two headers and the tubes between them is made of, and its solution.
 *
 * @module
 */
import type { AirProperties } from "../air/mod.ts";
import type { Conduit } from "../tubes/mod.ts";
import type { JunctionModel } from "./junctions.ts";

/** One tube of the network. */
export interface NetworkTube extends Conduit {
  /** m along the headers; tubes stand in rising order, those on either side share a place */
  readonly position: number;
  /** m between the headers */
  readonly length: number;
  /** velocity heads of inlet, exit and the rest */
  readonly minorLoss: number;
  /** Darcy factor where it is fixed; null where roughness or Manning's n decide */
  readonly frictionFactor: number | null;
  /** false where it is blocked */
  readonly open: boolean;
}

/** A place where air enters the supply header or leaves the return header. */
export interface Port {
  /** number of tubes on the left of it: 0 at the left end, all at the right end */
  readonly after: number;
  /** share of the whole flow; null at all ports of a header that hang on one plenum */
  readonly share: number | null;
}

/** One header. */
export interface HeaderLine {
  /** inside diameter at each tube, m */
  readonly diameters: readonly number[];
  /** m, sand roughness */
  readonly roughness: number;
  /** Manning n of a corrugated header, s/m^(1/3); null for another */
  readonly manning: number | null;
  /** Darcy factor where it is fixed, 0 for a frictionless header; null where roughness decides */
  readonly frictionFactor: number | null;
  /** velocity heads of the header lost at each tube to parts that stand in it; null for none */
  readonly obstructions: readonly number[] | null;
  /** where air enters or leaves */
  readonly ports: readonly Port[];
  /** m between an end port and the next tube */
  readonly lead: number;
}

/** Two headers with the tubes between them. */
export interface HeaderNetwork {
  /** tubes in the order of the header */
  readonly tubes: readonly NetworkTube[];
  /** supply header */
  readonly supply: HeaderLine;
  /** null where the tubes blow freely into a room */
  readonly return: HeaderLine | null;
  /** how a take-off changes the pressure */
  readonly junctions: JunctionModel;
  /** properties of the air */
  readonly air: AirProperties;
}

/** Solution of a network. */
export interface NetworkFlow {
  /** m³/s of each tube, positive from supply to return */
  readonly flows: Float64Array;
  /** m³/s in the supply header on the left of each tube, positive to the right */
  readonly supplyFlows: Float64Array;
  /** the same in the return header, m³/s; 0 where there is none */
  readonly returnFlows: Float64Array;
  /** static pressure at each tube, Pa over the first return port (or the room) */
  readonly supplyPressure: Float64Array;
  /** static pressure along the return header, Pa, by tube */
  /** the same in the return header, Pa */
  readonly returnPressure: Float64Array;
  /** total pressure lost from the first supply port to the first return port, Pa */
  readonly pressureDrop: number;
  /** share of the flow by supply port and by return port */
  readonly supplyShares: readonly number[];
  /** share of the air leaving at each port of the return header */
  readonly returnShares: readonly number[];
  /** Newton steps and largest pressure residual, Pa */
  readonly iterations: number;
  /** what the balance leaves unexplained, as a share */
  readonly residual: number;
}
