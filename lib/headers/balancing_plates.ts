/** Plates in the tube ends of a study, tube by tube. @module */
import { groupNetwork } from "./build.ts";
import { firstGroup, type HeadersQuestion } from "./first_group.ts";
import { balancingOrifices } from "./orifices.ts";
import { solveNetwork } from "./solve.ts";

/** A plate whose hole is wider than this share of the tube is left out. */
const NO_PLATE = 0.995;

/** One tube and its balancing plate. */
export interface BalanceRow {
  /** flow of the tube without plates, over the mean */
  readonly share: number;
  /** m, hole of its plate; null where it needs none */
  readonly hole: number | null;
}

/** Balancing orifices of the first group. */
export interface BalanceStudy {
  /** tube by tube */
  readonly tubes: readonly BalanceRow[];
  /** number of tubes that get a plate */
  readonly plates: number;
  /** Pa without plates */
  readonly pressureBefore: number;
  /** Pa with plates */
  readonly pressureAfter: number;
}

/**
 * Plates that make all tubes of the first group carry the same.
 *
 * @param question headers, tubes and air
 */
export function balanceStudy(question: HeadersQuestion): BalanceStudy {
  const { group, airFlow } = firstGroup(question);
  const network = groupNetwork(group);
  const before = solveNetwork(network, airFlow);
  const { holes, pressureDrop } = balancingOrifices(network, airFlow);
  const mean = airFlow / group.places.length;
  const needed = (hole: number) => hole < NO_PLATE * question.tubes.diameter;
  return {
    tubes: Array.from(before.flows, (flow, tube) => ({
      share: flow / mean,
      hole: needed(holes[tube]!) ? holes[tube]! : null,
    })),
    plates: Array.from(holes).filter(needed).length,
    pressureBefore: before.pressureDrop,
    pressureAfter: pressureDrop,
  };
}
