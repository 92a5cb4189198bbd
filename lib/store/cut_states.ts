/** House and ground at the hours at which a power cut is tried. @module */
import type { HouseState } from "../house/types.ts";

/** Start of a power cut, by name. */
export type CutStart = "coldest hour" | "coldest three days";

/** House and ground at the start of an hour. */
export interface CutState {
  /** which start it is */
  readonly start: CutStart;
  /** hour index of the cut */
  readonly hour: number;
  /** states of the reduced soil */
  readonly soil: Float64Array;
  /** air, humidity, barrels and masonry */
  readonly house: HouseState;
  /** J that the tubes still owe the house */
  readonly owed: number;
  /** kg of vapour owed likewise */
  readonly vapourOwed: number;
}

/** States at the cut, of the years in which they were kept. */
export interface CutStates {
  /** with the store, free running */
  readonly store: readonly CutState[];
  /** with the store, held at the set point */
  readonly storeHeated: readonly CutState[];
  /** fan never on, free running */
  readonly noStore: readonly CutState[];
  /** fan never on, held at the set point */
  readonly noStoreHeated: readonly CutState[];
}
