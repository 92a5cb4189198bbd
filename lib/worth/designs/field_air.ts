/** Air through a design: shares of the tubes, fans at the design flow, and the limits of both. @module */
import { fanChapter, type FanInputs, type FanResult, LEAST_FLOW_RATIO } from "../../fan/mod.ts";
import { headersChapter, type HeadersInputs, type HeadersResult } from "../../headers/mod.ts";
import { crossSection, tubesChapter, type TubesInputs, type TubesResult } from "../../tubes/mod.ts";
import { LEAST_SHARE_OF_AIR } from "../design_faults.ts";
import type { DesignChoice, DesignQuestion } from "./types.ts";

/** m/s in headers and risers; faster air is loud: common practice, no source. */
const HEADER_SPEED = 5;
const RISER_SPEED = 6;
/** Fans turned down further than this hunt: common practice, no source. */
const SLOWEST = 0.3;
/** Fans that move more than this of the design flow waste power: common practice, no source. */
const MOST_FLOW_RATIO = 1.15;

/** Sections of the study as a design has them. */
export interface DesignSections {
  /** tubes section */
  readonly tubesInputs: TubesInputs;
  /** headers section */
  readonly headersInputs: HeadersInputs;
}

/** Air through a design. */
export interface BuiltAir {
  /** tubes chapter */
  readonly tubes: TubesResult;
  /** flow of each tube over the mean */
  readonly shares: Float64Array;
  /** fan chapter */
  readonly fan: FanResult;
  /** speed of the fans over the rated one */
  readonly speed: number;
  /** limits that the air breaks, null for each that it keeps */
  readonly faults: readonly (string | null)[];
}

/** Sections of the study with a design in them; both headers grow alike. */
export function sectionsOf(choice: DesignChoice, question: DesignQuestion): DesignSections {
  const { headers, tubes } = question;
  const { tube, count, length, spacing, layers, depth, airFlow } = choice;
  // one pair of headers a layer where the study has that
  const each = headers.groups === tubes.layers;
  return {
    tubesInputs: { ...tubes, tube, count, length, spacing, layers, depth, airFlow },
    headersInputs: {
      ...headers,
      diameter: choice.header,
      returnDiameter: headers.returnDiameter * choice.header / headers.diameter,
      groups: each ? layers : Math.min(headers.groups, count),
    },
  };
}

/** Tubes and headers of a design, which hang on neither its fans nor its depth. */
export interface TubesAndHeaders {
  /** tubes chapter */
  readonly tubes: TubesResult;
  /** headers chapter */
  readonly headers: HeadersResult;
}

/**
 * Limits that the air would break in headers and risers, whatever the fans give; null for each that it
 * keeps.
 *
 * @param choice of the design
 * @param question the study
 * @param headersInputs section of the design
 */
export function wideEnough(
  choice: DesignChoice,
  { fan }: DesignQuestion,
  headersInputs: HeadersInputs,
): readonly (string | null)[] {
  const riser = choice.airFlow / choice.fans / crossSection(fan.riserDiameter);
  const narrow = Math.min(headersInputs.diameter, headersInputs.returnDiameter);
  const header = choice.airFlow / headersInputs.groups / crossSection(narrow);
  return [
    header > HEADER_SPEED ? "air too fast in the headers" : null,
    riser > RISER_SPEED ? "air too fast in the risers" : null,
  ];
}

/**
 * Tubes and headers of a design.
 *
 * @throws {InputError} where headers do not go with the tubes
 */
export function tubesAndHeaders(
  { tubesInputs, headersInputs }: DesignSections,
  { house, air }: DesignQuestion,
): TubesAndHeaders {
  const tubes = tubesChapter(tubesInputs, { house, ...air });
  return { tubes, headers: headersChapter(headersInputs, tubes, air) };
}

/**
 * Air through a design. Its fans are turned down to the design flow; those of the study's own design
 * keep their speed.
 *
 * @param choice of the design
 * @param question the study
 * @param given its tubes and headers, and whether it is the study's own
 * @throws {InputError} where the fans do not go with the tubes
 */
export function fieldAir(
  choice: DesignChoice,
  question: DesignQuestion,
  { tubes, headers, own }: TubesAndHeaders & { readonly own: boolean },
): BuiltAir {
  const inputs = { ...question.fan, fan: choice.fan, count: choice.fans };
  const run = (speed: number) =>
    fanChapter({ ...inputs, speed }, { tubesInputs: choice, headers, ...question.air });
  const speed = own ? inputs.speed : speedFor(run, inputs);
  const fan = run(speed);
  return {
    tubes,
    shares: headers.shares,
    fan,
    speed,
    faults: [
      headers.flowMin < LEAST_SHARE_OF_AIR ? "a tube gets too little air" : null,
      fan.flowRatio < LEAST_FLOW_RATIO ? "the fan does not reach its flow" : null,
      fan.flowRatio > MOST_FLOW_RATIO ? "the fan is too strong" : null,
      fan.stalled ? "the fan stalls" : null,
    ],
  };
}

/** Speed at which the fans move the design flow, or the nearest that they have. */
function speedFor(run: (speed: number) => FanResult, { speed: own }: FanInputs): number {
  let [low, high] = [SLOWEST, Math.max(1, own)];
  if (run(high).flowRatio <= 1) return high;
  for (let step = 0; step < 8; step++) {
    const middle = (low + high) / 2;
    if (run(middle).flowRatio < 1) low = middle;
    else high = middle;
  }
  return high;
}
