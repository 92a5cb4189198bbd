/**
 * A search that starts from the field of a study.
 *
 * @module
 */
import { DAY } from "../basics/mod.ts";
import { airProperties } from "../air/mod.ts";
import { allowance } from "./allowances.ts";
import { floorExtents, type FloorSize } from "./positions.ts";
import { crossSection } from "./pressure.ts";
import { findTube, TUBES } from "./products.ts";
import {
  type FieldCandidate,
  type PitOf,
  type SearchChoices,
  searchFields,
  type SearchLimits,
  type SearchPrices,
  type SearchResult,
  type SearchSetting,
} from "./search.ts";
import type { TubesInputs } from "./types.ts";

/** Outcome of a search around a study. */
export interface SearchAround extends SearchResult {
  /** the study's own field, whether it keeps to the limits or not; null where its tube has no price */
  readonly own: FieldCandidate | null;
}

/** What the search takes from the study besides the tubes. */
export interface SearchSurroundings {
  /** floor of the house */
  readonly house: FloorSize;
  /** underside of the footing below the floor, m; 0 where there is none, null where nobody knows */
  readonly footingDepth: number | null;
  /** Pa */
  readonly pressure: number;
  /** degC of the air in the tubes */
  readonly airTemperature: number;
  /** W/(m K) and J/(m³ K) */
  readonly soil: { readonly conductivity: number; readonly heatCapacity: number };
  /** amplitude of the intake air about the soil's mean, K */
  readonly swing: number;
  /** Pa of everything besides the tubes at the design flow */
  readonly otherPressure: number;
  /** fan and motor, wire to air, 0 to 1 */
  readonly fanEfficiency: number;
  /** hours that the fan runs in a day */
  readonly fanHours: number;
  /** prices of tubes, ends and digging */
  readonly prices: SearchPrices;
  /** the pit that a field needs, tubes and headers */
  readonly pit: PitOf;
}

/** m at each end of the tubes for headers and hands (common practice, no source). */
const HEADER_ROOM = 0.6;
/** m/s and Pa beyond which tubes are not worth a look (common practice, no source). */
const SPEEDS = [0.5, 4] as const;
const PRESSURE_MAX = 150;

/**
 * Tries fields around the one of the study: the same kind of tube in all sizes of the price list, air
 * speeds from 0.5 to 4 m/s, lengths up to the floor, one to three layers, several spacings and depths.
 *
 * @param inputs `tubes` section of the study
 * @param surroundings house, soil, air, fan and prices
 * @returns the fields that no other one beats, and how many were refused for what
 */
export function searchAround(
  inputs: TubesInputs,
  surroundings: SearchSurroundings,
): SearchAround {
  const limits = limitsAround(inputs, surroundings);
  const { along } = limits.floor;
  const { soil, swing, otherPressure, fanEfficiency, fanHours, prices, pit } = surroundings;
  const setting = {
    airFlow: inputs.airFlow,
    air: airProperties(surroundings.airTemperature, surroundings.pressure),
    soil,
    layerSpacing: inputs.layerSpacing,
    extraLosses: inputs.extraLosses,
    swing,
    period: DAY,
    otherPressure,
    fanEfficiency,
    fanHours,
    prices,
    pit,
  };
  return {
    ...searchFields(choicesAround(inputs, { along, prices }), limits, setting),
    own: ownField(inputs, setting),
  };
}

/** Limits of speed, pressure and floor that every field keeps. */
export function limitsAround(
  { direction }: Pick<TubesInputs, "direction">,
  { house, footingDepth }: Pick<SearchSurroundings, "house" | "footingDepth">,
): SearchLimits {
  const { along, across } = floorExtents(house, direction);
  return {
    airSpeedMin: SPEEDS[0],
    airSpeedMax: SPEEDS[1],
    pressureMax: PRESSURE_MAX,
    floor: {
      along,
      across,
      headerRoom: HEADER_ROOM,
      footingDepth,
      coverMin: 0.3,
      digMax: 2,
    },
  };
}

const NO_LIMITS: SearchLimits = {
  airSpeedMin: 0,
  airSpeedMax: Infinity,
  pressureMax: Infinity,
  floor: {
    along: Infinity,
    across: Infinity,
    headerRoom: 0,
    footingDepth: null,
    coverMin: -Infinity,
    digMax: Infinity,
  },
};

/** The study's own field worked out like the others; null where its tube has no price. */
function ownField(inputs: TubesInputs, setting: SearchSetting): FieldCandidate | null {
  if (setting.prices.tubePerMetre[inputs.tube] === undefined) return null;
  const { tube, count, length, spacing, layers, depth } = inputs;
  const choices = {
    tubes: [tube],
    counts: [count],
    lengths: [length],
    spacings: [spacing],
    layers: [layers],
    depths: [depth],
  };
  return searchFields(choices, NO_LIMITS, setting).front[0] ?? null;
}

function choicesAround(
  inputs: TubesInputs,
  given: { readonly along: number; readonly prices: SearchPrices },
): SearchChoices {
  const own = findTube(inputs.tube);
  const alike = TUBES.filter((tube) =>
    tube.wall === own.wall && tube.perforated === own.perforated &&
    given.prices.tubePerMetre[tube.id] !== undefined
  );
  const tubes = [...new Set([own.id, ...alike.map(({ id }) => id)])];
  const areas = tubes.map((id) => crossSection(findTube(id).insideDiameter));
  const fewest = Math.max(1, Math.ceil(inputs.airFlow / (SPEEDS[1] * Math.max(...areas))));
  const most = Math.max(fewest, Math.floor(inputs.airFlow / (SPEEDS[0] * Math.min(...areas))));
  const longest = Math.max(1, given.along - 2 * HEADER_ROOM);
  const near = (value: number, factors: readonly number[]): number[] =>
    factors.map((factor) => Math.round(100 * factor * value) / 100);
  return {
    tubes,
    counts: spread(fewest, Math.min(most, 200), 12, inputs.count),
    lengths: near(longest, [0.3, 0.5, 0.65, 0.8, 1]),
    spacings: near(inputs.spacing, [0.75, 1, 1.5]),
    layers: [...new Set([1, 2, 3, inputs.layers])].sort((a, b) => a - b),
    depths: [...new Set(near(inputs.depth, [0.8, 1, 1.3]))].filter((depth) =>
      depth > allowance("bedding")
    ),
  };
}

/** Whole numbers from the fewest to the most in equal ratios, with the study's own among them. */
function spread(fewest: number, most: number, steps: number, own: number): readonly number[] {
  const ratio = (most / fewest) ** (1 / steps);
  const counts = Array.from({ length: steps + 1 }, (_, i) => Math.round(fewest * ratio ** i));
  return [...new Set([...counts, own])].sort((a, b) => a - b);
}
