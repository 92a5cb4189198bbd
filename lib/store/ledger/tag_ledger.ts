/** Where the heat put in during each quarter went. @module */
import { sum } from "d3-array";
import { ratio } from "../../basics/mod.ts";

/** Where the heat put in during each quarter went, J. */
export interface TagLedger {
  /** put in during each quarter */
  readonly putIn: Float64Array;
  /** back[given back in][put in during], and last the undisturbed ground */
  readonly back: readonly Float64Array[];
  /** of the running quarter's own heat, given back in the same quarter */
  readonly sameQuarter: Float64Array;
  /** by quarter put in: through the floor into the house, outside and below, still there (change) */
  readonly floor: Float64Array;
  readonly lost: Float64Array;
  readonly gained: Float64Array;
}

/** A ledger of zeros. */
export function emptyTagLedger(): TagLedger {
  return {
    putIn: new Float64Array(4),
    back: Array.from({ length: 4 }, () => new Float64Array(5)),
    sameQuarter: new Float64Array(4),
    floor: new Float64Array(4),
    lost: new Float64Array(4),
    gained: new Float64Array(4),
  };
}

/**
 * Of the heat given back, the share put in during an earlier quarter. Where the undisturbed ground is
 * colder than the house it takes of the heat that comes back, and the share is that of the whole of it.
 *
 * @param tags of a year
 * @param heatOut J given back in the year
 * @returns 0 to 1; null where nothing is given back
 */
export function carriedShare(tags: TagLedger, heatOut: number): number | null {
  const tagged = sum(tags.back, (row) => sum(row.subarray(0, 4)));
  return ratio(tagged - sum(tags.sameQuarter), Math.max(heatOut, tagged));
}
