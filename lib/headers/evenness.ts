/**
 * How even the shares of the tubes are, and what unevenness costs in heat.
 *
 * @module
 */
import { mean, sum } from "d3-array";
import { exchangedFlow, type HeatedTubes } from "../tubes/mod.ts";

/** Summary of the shares of the tubes. */
export interface Evenness {
  /** smallest and largest share over the mean */
  readonly flowMin: number;
  /** greatest tube flow over the mean */
  readonly flowMax: number;
  /** coefficient of variation */
  readonly unevenness: number;
}

/**
 * Smallest, largest and coefficient of variation of the shares.
 *
 * @param flows flow of each tube, all in the same unit
 * @returns the summary
 */
export function evenness(flows: ArrayLike<number>): Evenness {
  const list = Array.from(flows);
  const average = mean(list)!;
  if (average === 0) return { flowMin: 1, flowMax: 1, unevenness: 0 };
  const variance = sum(list, (flow) => (flow / average - 1) ** 2) / list.length;
  return {
    flowMin: Math.min(...list.map((flow) => flow / average)),
    flowMax: Math.max(...list.map((flow) => flow / average)),
    unevenness: Math.sqrt(variance),
  };
}

/**
 * Heat of the field over that of the same air shared evenly, all walls at one temperature, dry.
 *
 * Σ Qᵢ·ε(Qᵢ) / (N·Q̄·ε(Q̄)). Source: exact for the stated case; the film coefficient follows the
 * speed in each tube. The walls of starved tubes would in time move less than those of rich ones,
 * which makes the true loss somewhat larger.
 *
 * Where the even share lies between laminar and turbulent (Reynolds 2300 to 4000), or a little below,
 * a tube that gets more air gains more film than a starved one loses, and the ratio can pass 1.
 *
 * @param flows m³/s of each tube; the direction does not matter
 * @param tubes tube, length and air
 * @returns a ratio, at most 1 where every tube is laminar or every tube turbulent
 */
export function heatFactor(flows: ArrayLike<number>, tubes: HeatedTubes): number {
  const average = mean(Array.from(flows))!;
  if (average === 0) return 1;
  return exchangedFlow(flows, tubes) / (flows.length * exchangedFlow([average], tubes));
}
