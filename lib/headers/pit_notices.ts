/** What is said of the pit before anybody digs it. @module */
import { type Notice, notice } from "../basics/mod.ts";
import { footingLine, footingWarning, type Pit } from "../tubes/mod.ts";
import { showBoth } from "../units/mod.ts";

/** The house over the pit, as the study gives it. */
export interface HouseOverPit {
  /** along the ridge, m */
  readonly length: number;
  /** across the ridge, m */
  readonly width: number;
  /** underside of the footing below the floor, m; 0 where there is none, null where unknown */
  readonly footingDepth: number | null;
}

/** Depth from which a trench must be protected in any case, m (common practice, no source). */
const PROTECTED_DEPTH = 1.2;

/**
 * Notices about footings and trench walls.
 *
 * @param pit the pit round tubes and headers
 * @param house the house over it
 * @param direction the tubes run along or across the house
 * @returns cautions
 */
export function pitNotices(
  pit: Pit,
  house: HouseOverPit,
  direction: "along" | "across",
): readonly Notice[] {
  const { length, width, footingDepth } = house;
  const list: Notice[] = [];
  const warning = footingWarning(footingLine(pit, {
    footingDepth,
    house: direction === "along"
      ? { along: length, across: width }
      : { along: width, across: length },
  }));
  if (warning !== null) list.push(notice("caution", "headers", warning));
  if (pit.lowEnd > PROTECTED_DEPTH) {
    list.push(notice(
      "caution",
      "headers",
      `The pit is ${
        showBoth(pit.lowEnd, "depth")
      } deep. Trench walls collapse without warning: nobody enters ` +
        "an unprotected trench; slope, bench or shore it as local rules require, and have buried " +
        "services located before digging.",
    ));
  }
  return list;
}
