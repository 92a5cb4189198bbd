/** Tubes shut by water: where their air goes. @module */
import { exchangedFlow } from "../tubes/mod.ts";
import { groupNetwork } from "./build.ts";
import { firstGroup, type HeadersQuestion } from "./first_group.ts";
import { fouledGroup } from "./fouling.ts";
import { solveNetwork } from "./solve.ts";

/** A group with some tubes shut, at the group's design flow. */
export interface BlockedRow {
  /** which tubes */
  readonly name: string;
  /** least flow of the open tubes over the mean of all clean ones */
  readonly flowMin: number;
  /** greatest flow of the open tubes over the mean of all clean ones */
  readonly flowMax: number;
  /** Pa, headers and tubes */
  readonly pressureDrop: number;
  /** ratio of the heat to that of the clean group at the same air flow, walls at one temperature */
  readonly heat: number;
}

/**
 * The first group with none, one and a quarter of its tubes under water.
 *
 * @param question headers, tubes and air
 */
export function blockedTubes(question: HeadersQuestion): BlockedRow[] {
  const { tubes } = question;
  const { group, airFlow } = firstGroup(question);
  const count = group.places.length;
  const full = { depth: tubes.diameter, length: tubes.length };
  const quarter = Math.max(1, Math.floor(count / 4));
  const ways: readonly (readonly [string, readonly number[]])[] = [
    ["all tubes clean", []],
    ["the first tube flooded", [0]],
    ["the middle tube flooded", [Math.floor(count / 2)]],
    [`the last ${quarter} tubes flooded`, range(count - quarter, count)],
  ];
  const clean = exchangedFlow(solveNetwork(groupNetwork(group), airFlow).flows, group);
  return ways.filter(([, shut]) => shut.length < count).map(([name, shut]) => {
    const fouled = fouledGroup(group, new Map(shut.map((tube) => [tube, full])), airFlow);
    const { flows, pressureDrop } = solveNetwork(groupNetwork(fouled), airFlow);
    const open = [...flows].filter((_, tube) => !shut.includes(tube));
    const mean = airFlow / count;
    return {
      name,
      flowMin: Math.min(...open) / mean,
      flowMax: Math.max(...open) / mean,
      pressureDrop,
      heat: exchangedFlow(flows, group) / clean,
    };
  });
}

function range(from: number, to: number): number[] {
  return Array.from({ length: to - from }, (_, index) => from + index);
}
