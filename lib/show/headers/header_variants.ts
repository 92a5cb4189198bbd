/** Headers of other sizes and layouts, and with careless tube ends. @module */
import { showSi } from "../../units/mod.ts";
import {
  balancingOrifices,
  exchangedFlow,
  FLANGED,
  fouledGroup,
  groupNetwork,
  headerDiameterFor,
  headerGroups,
  type HeaderLayout,
  headersChapter,
  headersOfSize,
  type HeadersResult,
  scatterWorkmanship,
  type SizedHeaders,
  solveNetwork,
  type Workmanship,
  type WorkmanshipResult,
} from "../../headers/mod.ts";
import { DESIGN_AIR_TEMPERATURE, meanPressure, type Study } from "../../study/mod.ts";
import type { TubesResult } from "../../tubes/mod.ts";

/** Inside diameters people find: 8 to 24 inches, m. */
const SIZES = [8, 10, 12, 15, 18, 24].map((inches) => inches * 0.0254);
/** Ends between flush and 25 mm in, half of the holes with a burr; common practice, no source. */
const CARELESS = { insertionMin: 0, insertionMax: 0.025, burrShare: 0.5, burrLoss: 0.5 };
const TRIALS = 100;

/** One size in one layout. */
export interface HeaderVariant extends SizedHeaders {
  /** how it is fed */
  readonly layout: HeaderLayout;
}

function firstGroup(study: Study, tubes: TubesResult, layout = study.headers.layout) {
  const state = { pressure: meanPressure(study), airTemperature: DESIGN_AIR_TEMPERATURE };
  const { group, members } = headerGroups({ ...study.headers, layout }, tubes, state)[0]!;
  return { group, airFlow: tubes.flowPerTube * members.length };
}

/** Headers of common sizes in three layouts, for the first group of tubes. */
export function headerVariants(study: Study, tubes: TubesResult): HeaderVariant[] {
  return (["Z", "U", "centre"] as const).flatMap((layout) => {
    const { group, airFlow } = firstGroup(study, tubes, layout);
    const least = 1.05 * tubes.product.outsideDiameter;
    return SIZES.filter((size) => size >= least)
      .map((size) => ({ layout, ...headersOfSize(group, airFlow, size) }));
  });
}

/** A hundred fields with carelessly set tube ends; the same ones every time. */
export function carelessEnds(study: Study, tubes: TubesResult): WorkmanshipResult {
  const { group, airFlow } = firstGroup(study, tubes);
  return scatterWorkmanship(group, airFlow, { workmanship: CARELESS, trials: TRIALS, seed: 1 });
}

/** The study's headers in one of the layouts. */
export interface LayoutVariant {
  /** how it is fed */
  readonly layout: HeaderLayout;
  /** the headers chapter for it */
  readonly result: HeadersResult;
}

const LAYOUTS = ["U", "Z", "centre", "two-ended"] as const;

/** The headers chapter for each layout, everything else as in the study. */
export function layoutVariants(study: Study, tubes: TubesResult): LayoutVariant[] {
  const state = { pressure: meanPressure(study), airTemperature: DESIGN_AIR_TEMPERATURE };
  return LAYOUTS.map((layout) => ({
    layout,
    result: headersChapter({ ...study.headers, layout }, tubes, state),
  }));
}

/** Smallest header for a wanted evenness in one layout. */
export interface WantedHeader {
  /** how it is fed */
  readonly layout: HeaderLayout;
  /** coefficient of variation wanted */
  readonly unevenness: number;
  /** the headers; null where no size does it */
  readonly sized: SizedHeaders | null;
}

/** Smallest headers for an unevenness of 5 and of 2 % in each layout, first group of tubes. */
export function wantedHeaders(study: Study, tubes: TubesResult): WantedHeader[] {
  return LAYOUTS.flatMap((layout) => {
    const { group, airFlow } = firstGroup(study, tubes, layout);
    return [0.05, 0.02].map((unevenness) => ({
      layout,
      unevenness,
      sized: headerDiameterFor(group, airFlow, unevenness),
    }));
  });
}

/** One way to set the tube ends. */
export interface WorkmanshipStudy {
  /** what was done */
  readonly name: string;
  /** spread over the drawn fields */
  readonly result: WorkmanshipResult;
}

/**
 * Flanged connectors, careless ends and very careless ones, a hundred fields each. "Very careless" goes
 * to 100 mm or a third of the header, whichever is less.
 */
export function workmanshipStudies(study: Study, tubes: TubesResult): WorkmanshipStudy[] {
  const { group, airFlow } = firstGroup(study, tubes);
  const deep = Math.min(0.1, study.headers.diameter / 3);
  const ways: readonly (readonly [string, Workmanship])[] = [
    ["flanged, all flush", FLANGED],
    ["0 to 25 mm in, burrs at half", CARELESS],
    [
      `0 to ${showSi(deep, "smallLength")} in, large burrs at half`,
      { insertionMin: 0, insertionMax: deep, burrShare: 0.5, burrLoss: 0.8 },
    ],
  ];
  return ways.map(([name, workmanship]) => ({
    name,
    result: scatterWorkmanship(group, airFlow, { workmanship, trials: TRIALS, seed: 1 }),
  }));
}

/** A group with some tubes shut, at the group's design flow. */
export interface BlockedRow {
  /** which tubes */
  readonly name: string;
  /** least and greatest flow of the open tubes over the mean of all clean ones */
  readonly flowMin: number;
  /** greatest flow of the open tubes over the mean of all clean ones */
  readonly flowMax: number;
  /** Pa, headers and tubes */
  readonly pressureDrop: number;
  /** ratio of the heat to that of the clean group at the same air flow, walls at one temperature */
  readonly heat: number;
}

/** The first group with none, one and a quarter of its tubes under water. */
export function blockedTubes(study: Study, tubes: TubesResult): BlockedRow[] {
  const { group, airFlow } = firstGroup(study, tubes);
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

/** Balancing orifices of the first group. */
export interface BalanceStudy {
  /** share of each tube without plates, over the mean */
  readonly shares: readonly number[];
  /** hole of each plate, m; the tube's own diameter where none is needed */
  readonly holes: readonly number[];
  /** Pa without plates */
  readonly pressureBefore: number;
  /** Pa with plates */
  readonly pressureAfter: number;
  /** inside diameter of the tubes, m */
  readonly diameter: number;
}

/** Plates that make all tubes of the first group carry the same. */
export function balanceStudy(study: Study, tubes: TubesResult): BalanceStudy {
  const { group, airFlow } = firstGroup(study, tubes);
  const network = groupNetwork(group);
  const before = solveNetwork(network, airFlow);
  const { holes, pressureDrop } = balancingOrifices(network, airFlow);
  const mean = airFlow / group.places.length;
  return {
    shares: [...before.flows].map((flow) => flow / mean),
    holes: [...holes],
    pressureBefore: before.pressureDrop,
    pressureAfter: pressureDrop,
    diameter: tubes.diameter,
  };
}
