/**
 * Several header pairs on one fan: they share the air so that all need the same pressure.
 *
 * @module
 */
import { mean, sum } from "d3-array";
import { NotConvergedError } from "../basics/mod.ts";
import type { HeaderNetwork, NetworkFlow } from "./network.ts";
import { solveNetwork } from "./solve.ts";

const MOST_ROUNDS = 60;

/**
 * Shares an air flow over networks in parallel.
 *
 * Each round takes every network's Δp/Q² as its resistance and shares the air by 1/√resistance.
 *
 * @param networks the networks
 * @param airFlow m³/s of all together
 * @returns solution of each network
 * @throws {NotConvergedError} where the pressures do not meet
 */
export function solveParallel(
  networks: readonly HeaderNetwork[],
  airFlow: number,
): readonly NetworkFlow[] {
  const open = networks.map(({ tubes }) => tubes.filter((tube) => tube.open).length);
  const all = sum(open);
  let flows = open.map((count) => airFlow * count / all);
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const solved = networks.map((network, g) => solveNetwork(network, flows[g]!));
    const drops = solved.map(({ pressureDrop }) => pressureDrop);
    const average = mean(drops)!;
    const spread = Math.max(...drops.map((drop) => Math.abs(drop - average)));
    if (networks.length === 1 || spread <= 1e-9 * Math.abs(average)) return solved;
    const conductances = flows.map((flow, g) => flow / Math.sqrt(Math.abs(drops[g]!)));
    const total = sum(conductances);
    flows = conductances.map((value) => airFlow * value / total);
  }
  throw new NotConvergedError("the shares of the header groups", MOST_ROUNDS, Number.NaN);
}
