/** Where the heat of January to March comes from. @module */
import { sum } from "d3-array";
import { ratio } from "../basics/mod.ts";

/** Heat and its share of what the tubes give back from January to March. */
export interface ReturnedPart {
  /** kWh */
  readonly heat: number;
  /** 0 to 1; null where nothing is given back */
  readonly share: number | null;
}

/** Heat that the tubes give back from January to March by its origin. */
export interface FirstQuarter {
  /** kWh given back */
  readonly heat: number;
  /** put in from January to March */
  readonly sameQuarter: ReturnedPart;
  /** put in from October to December */
  readonly autumn: ReturnedPart;
  /** put in from April to September */
  readonly summer: ReturnedPart;
  /** in the ground had the tubes never put anything in */
  readonly ground: ReturnedPart;
}

/**
 * Reads the first row of the quarter-to-quarter table.
 *
 * @param row kWh given back from January to March, by the quarter it was put in; last the
 * undisturbed ground's
 */
export function firstQuarter(row: readonly number[]): FirstQuarter {
  const heat = sum(row);
  const part = (own: number): ReturnedPart => ({ heat: own, share: ratio(own, heat) });
  return {
    heat,
    sameQuarter: part(row[0]!),
    autumn: part(row[3]!),
    summer: part(row[1]! + row[2]!),
    ground: part(row[4]!),
  };
}
