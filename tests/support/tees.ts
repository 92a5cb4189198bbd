/**
 * Loss coefficients of tees after Crane, on the velocity head of the combined flow.
 *
 * r is the branch flow over the combined flow, β the branch diameter over the run diameter.
 * A negative coefficient means that the stream gains total pressure from the other one.
 *
 * Source of all: Crane TP-410 [crane-tp410-2009], 2009 edition, ch. 2, as the fluids library
 * [fluids-2016] has it; checked with the examples 7-35 and 7-36.
 *
 * @module
 */
import { requireInRange } from "../../lib/basics/mod.ts";

/** A tee in service. */
export interface Tee {
  /** m */
  readonly runDiameter: number;
  /** m */
  readonly branchDiameter: number;
  /** flow that stays in the run, any unit */
  readonly runFlow: number;
  /** flow of the branch, same unit */
  readonly branchFlow: number;
  /** degrees between branch and run, 30 to 90 */
  readonly angle: number;
}

function ratios(tee: Tee): { readonly share: number; readonly area: number } {
  requireInRange("tee angle", tee.angle, 30, 90, "degrees");
  requireInRange("tee flow", tee.runFlow, 0, Infinity, "");
  requireInRange("tee branch flow", tee.branchFlow, 0, Infinity, "");
  return {
    share: tee.branchFlow / (tee.runFlow + tee.branchFlow),
    area: (tee.branchDiameter / tee.runDiameter) ** 2,
  };
}

/** Factor F of the converging branch by angle, straight lines between 30, 45, 60 and 90 degrees. */
function convergingFactor(angle: number): number {
  const points = [[30, 1.74], [45, 1.41], [60, 1], [90, 0]] as const;
  const upper = Math.max(1, points.findIndex(([degrees]) => degrees >= angle));
  const [from, low] = points[upper - 1]!;
  const [to, high] = points[upper]!;
  return low + (high - low) * (angle - from) / (to - from);
}

/**
 * Branch of a converging tee. K = C·[1 + (r/β²)² − 2(1 − r)² − F·r²/β²].
 *
 * @param tee the tee
 * @returns velocity heads of the combined flow
 */
export function convergingBranchLoss(tee: Tee): number {
  const { share, area } = ratios(tee);
  const factor = area <= 0.35 ? 1 : share <= 0.4 ? 0.9 * (1 - share) : 0.55;
  return factor *
    (1 + (share / area) ** 2 - 2 * (1 - share) ** 2 -
      convergingFactor(tee.angle) * share ** 2 / area);
}

/**
 * Run of a converging tee at 90 degrees. K = 1.55·r − r².
 *
 * @param tee the tee
 * @returns velocity heads of the combined flow
 * @throws {OutOfRangeError} for another angle than 75 to 90 degrees
 */
export function convergingRunLoss(tee: Tee): number {
  requireInRange("angle of a converging run", tee.angle, 75, 90, "degrees");
  const { share } = ratios(tee);
  return 1.55 * share - share ** 2;
}

/**
 * Branch of a diverging tee. K = G·[1 + H·(r/β²)² − J·(r/β²)·cos θ].
 *
 * @param tee the tee
 * @returns velocity heads of the combined flow
 */
export function divergingBranchLoss(tee: Tee): number {
  const { share, area } = ratios(tee);
  const wide = tee.angle >= 60 && Math.sqrt(area) > 2 / 3;
  const [squared, turned] = wide ? [0.3, 0] : [1, 2];
  const cosine = Math.cos(tee.angle * Math.PI / 180);
  return divergingFactor(tee.angle, share, area) *
    (1 + squared * (share / area) ** 2 - turned * share / area * cosine);
}

function divergingFactor(angle: number, share: number, area: number): number {
  if (angle >= 75) return area <= 2 / 3 ? 1 : 1 + 0.3 * share ** 2;
  if (area <= 0.35) return share <= 0.4 ? 1.1 - 0.7 * share : 0.85;
  return share <= 0.6 ? 1 - 0.6 * share : 0.6;
}

/**
 * Run of a diverging tee. K = M·r², M = 0.4 for β² ≤ 0.4, else 2(2r − 1) up to r 0.5, then
 * 0.3(2r − 1).
 *
 * @param tee the tee
 * @returns velocity heads of the combined flow
 */
export function divergingRunLoss(tee: Tee): number {
  const { share, area } = ratios(tee);
  const factor = area <= 0.4 ? 0.4 : (share <= 0.5 ? 2 : 0.3) * (2 * share - 1);
  return factor * share ** 2;
}
