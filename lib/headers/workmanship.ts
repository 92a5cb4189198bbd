/**
 * What careless holes cost: tube ends pushed in by differing depths, burrs left at the edges.
 *
 * @module
 */
import { mean } from "d3-array";
import { requireInRange } from "../basics/mod.ts";
import { groupNetwork, type HeaderGroup } from "./build.ts";
import { exchangedFlow } from "../tubes/mod.ts";
import { type Evenness, evenness, heatFactor } from "./evenness.ts";
import { randomSource } from "./random.ts";
import { solveNetwork } from "./solve.ts";

/** How carefully the tube ends are set. */
export interface Workmanship {
  /** each end stands into the header by an even spread between these depths, m */
  readonly insertionMin: number;
  /** deepest, m */
  readonly insertionMax: number;
  /** share of the holes that keep their burr, 0 to 1 */
  readonly burrShare: number;
  /** velocity heads of the tube that a burr adds, an even spread up to this */
  readonly burrLoss: number;
}

/**
 * Flanged connectors: all ends flush, no burrs. For comparison.
 */
export const FLANGED: Workmanship = {
  insertionMin: 0,
  insertionMax: 0,
  burrShare: 0,
  burrLoss: 0,
};

/** Middle and spread of the trials. */
export interface Spread {
  /** mean of the trials */
  readonly mean: number;
  /** 5th percentile, the same unit */
  readonly low: number;
  /** 95th percentile, the same unit */
  readonly high: number;
}

/** Outcome of the trials at equal air flow. */
export interface WorkmanshipResult {
  /** number of fields drawn */
  readonly trials: number;
  /** coefficient of variation of the tube flows */
  readonly unevenness: Spread;
  /** share of the poorest tube over the mean */
  readonly flowMin: Spread;
  /** greatest tube flow over the mean */
  readonly flowMax: Spread;
  /** Pa, headers and tubes */
  readonly pressureDrop: Spread;
  /** heat over that of an even share at the same air flow */
  readonly heatFactor: Spread;
  /** heat over that of flanged connectors where the fan holds the air flow */
  readonly heatAtEqualFlow: Spread;
  /** the same where the fan holds the pressure, so that the air flow falls */
  readonly heatAtEqualPressure: Spread;
}

/**
 * Draws many fields with scattered insertions and burrs and solves each.
 *
 * @param group tubes and headers
 * @param airFlow m³/s of the group
 * @param study workmanship, number of trials and seed
 * @returns spread of evenness, pressure and heat
 */
export function scatterWorkmanship(
  group: HeaderGroup,
  airFlow: number,
  study: {
    readonly workmanship: Workmanship;
    readonly trials: number;
    readonly seed: number;
  },
): WorkmanshipResult {
  const { workmanship, trials } = study;
  requireInRange("trials", trials, 1, 1e5, "trials");
  requireInRange("share of burrs", workmanship.burrShare, 0, 1, "(0 to 1)");
  requireInRange(
    "largest insertion",
    workmanship.insertionMax,
    workmanship.insertionMin,
    group.inputs.diameter,
    "m",
  );
  const random = randomSource(study.seed);
  const flanged = flangedField(group, airFlow);
  const outcomes = Array.from(
    { length: trials },
    () => oneTrial(group, airFlow, { workmanship, random, flanged }),
  );
  return {
    trials,
    unevenness: spread(outcomes.map((outcome) => outcome.unevenness)),
    flowMin: spread(outcomes.map((outcome) => outcome.flowMin)),
    flowMax: spread(outcomes.map((outcome) => outcome.flowMax)),
    pressureDrop: spread(outcomes.map((outcome) => outcome.pressureDrop)),
    heatFactor: spread(outcomes.map((outcome) => outcome.heatFactor)),
    heatAtEqualFlow: spread(outcomes.map((outcome) => outcome.heatAtEqualFlow)),
    heatAtEqualPressure: spread(outcomes.map((outcome) => outcome.heatAtEqualPressure)),
  };
}

interface FlangedField {
  readonly exchangedFlow: number;
  readonly pressureDrop: number;
}

function flangedField(group: HeaderGroup, airFlow: number): FlangedField {
  const insertions = group.places.map(() => 0);
  const { flows, pressureDrop } = solveNetwork(groupNetwork({ ...group, insertions }), airFlow);
  return { exchangedFlow: exchangedFlow(flows, group), pressureDrop };
}

interface Trial extends Evenness {
  readonly pressureDrop: number;
  readonly heatFactor: number;
  readonly heatAtEqualFlow: number;
  readonly heatAtEqualPressure: number;
}

function oneTrial(
  group: HeaderGroup,
  airFlow: number,
  draw: {
    readonly workmanship: Workmanship;
    readonly random: () => number;
    readonly flanged: FlangedField;
  },
): Trial {
  const { workmanship, random, flanged } = draw;
  const depth = workmanship.insertionMax - workmanship.insertionMin;
  const insertions = group.places.map(() => workmanship.insertionMin + depth * random());
  const added = group.places.map((_, tube) => {
    const burr = random() < workmanship.burrShare ? workmanship.burrLoss * random() : 0;
    return (group.added?.[tube] ?? 0) + burr;
  });
  const { flows, pressureDrop } = solveNetwork(
    groupNetwork({ ...group, insertions, added }),
    airFlow,
  );
  // all losses of the field grow with the square of the flow, nearly so in smooth tubes
  const slowed = Math.sqrt(flanged.pressureDrop / pressureDrop);
  return {
    ...evenness(flows),
    pressureDrop,
    heatFactor: heatFactor(flows, group),
    heatAtEqualFlow: exchangedFlow(flows, group) / flanged.exchangedFlow,
    heatAtEqualPressure: exchangedFlow(flows.map((flow) => slowed * flow), group) /
      flanged.exchangedFlow,
  };
}

function spread(values: readonly number[]): Spread {
  const sorted = [...values].sort((a, b) => a - b);
  const at = (share: number): number => sorted[Math.round(share * (sorted.length - 1))]!;
  return {
    mean: mean(values)!,
    low: at(0.05),
    high: at(0.95),
  };
}
