/**
 * Faults of a design that must be mended before anybody digs.
 *
 * @module
 */
import { LEAST_FLOW_RATIO } from "../fan/mod.ts";
import { showBoth, showSi } from "../units/mod.ts";

/** What is looked at. */
export interface DesignFacts {
  /** least flow of a tube over the mean */
  readonly flowMin: number;
  /** ratio of the air flow that the fans reach to the design flow */
  readonly flowRatio: number;
  /** true where the fan works left of its pressure peak */
  readonly stalled: boolean;
  /** m between the pit and the 45° line from the footing; null where the footing is unknown */
  readonly footingRoom: number | null;
  /** m, bottom of the pit below the floor */
  readonly pitDepth: number;
  /** m, highest water table below the floor; null where unknown */
  readonly waterTableDepth: number | null;
}

/** A tube that gets less than this share of the mean is starved: common practice, no source. */
export const LEAST_SHARE_OF_AIR = 0.8;

/**
 * Names the faults, the gravest first; empty where the design can be built as it is. An unknown
 * footing is a fault: it has to be found out before the pit is dug.
 */
export function designFaults(facts: DesignFacts): readonly string[] {
  const { footingRoom, waterTableDepth, pitDepth, stalled, flowRatio, flowMin } = facts;
  const faults: string[] = [];
  if (waterTableDepth !== null && waterTableDepth <= pitDepth) {
    faults.push(
      `the water table (${showBoth(waterTableDepth, "length")}) stands in the pit (${
        showBoth(pitDepth, "length")
      } deep)`,
    );
  }
  if (footingRoom === null) faults.push("the depth of the footing is unknown");
  else if (footingRoom < 0) {
    faults.push(
      `the pit cuts the 45° line from the footing by ${showBoth(-footingRoom, "length")}`,
    );
  }
  if (stalled) faults.push("the fan stalls");
  if (flowRatio < LEAST_FLOW_RATIO) {
    faults.push(`the fan moves only ${showSi(flowRatio, "share")} of the design flow`);
  }
  if (flowMin < LEAST_SHARE_OF_AIR) {
    faults.push(`the poorest tube gets ${showSi(flowMin, "share")} of the mean flow`);
  }
  return faults;
}
