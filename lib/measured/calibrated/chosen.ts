/** Which estimate of a key counts where two stages give one. @module */
import type { Estimate } from "../calibration/estimate.ts";
import type { JointStage } from "../calibration/joint.ts";
import type { StageRow } from "./types.ts";

/** Ratio of the ends of an interval; infinite where one is not above 0. */
const width = ({ low, high }: Estimate): number => low > 0 ? high / low : Infinity;

/**
 * One estimate for each key: the one with the narrower interval. All that have no key stay as they are.
 *
 * @param stages of the log
 * @param joint the joint fit, where there is one
 */
export function chosenEstimates(stages: readonly StageRow[], joint: JointStage | null): Estimate[] {
  const all = [
    ...stages.flatMap(({ stage }) => stage?.estimates ?? []),
    ...(joint?.estimates ?? []),
  ];
  return all.filter((one, place) =>
    one.key === null ||
    all.every((other, k) =>
      other.key !== one.key || k === place || width(other) > width(one) ||
      (width(other) === width(one) && k > place)
    )
  );
}
