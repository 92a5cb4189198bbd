/** Blocked and flooded tubes by the pressure of the headers and the air flow. @module */
import type { FanCurve } from "../../fan/types.ts";
import { type AirPath, operatingPoint, systemPressure } from "../../fan/mod.ts";
import {
  fouledGroup,
  groupNetwork,
  headerGroups,
  type HeadersQuestion,
  solveParallel,
} from "../../headers/mod.ts";
import type { Filling } from "../../tubes/mod.ts";
import { findSensorKind } from "./sensor_kinds.ts";

/** What the limits are worked out from. */
export interface BlockedQuestion {
  /** headers, tubes and air */
  readonly headers: HeadersQuestion;
  /** air path of the fans; its field is replaced by that of the fouled tubes */
  readonly path: AirPath;
  /** curve of all fans together */
  readonly curve: FanCurve;
}

/** What headers and fan show with some tubes shut. */
export interface BlockedState {
  /** which tubes */
  readonly name: string;
  /** number of tubes that let nothing through */
  readonly shut: number;
  /** m³/s of the whole field where the fans meet it */
  readonly airFlow: number;
  /** Pa from supply to return header there */
  readonly pressure: number;
  /** resistance, pressure over flow squared, as a ratio to that of the clean field */
  readonly resistance: number;
  /** true where the resistance stands over the limit */
  readonly found: boolean;
}

/** Limits by which a blocked field is told. */
export interface BlockedLimits {
  /** Pa/(m³/s)², resistance of the clean field as planned; commissioning replaces it */
  readonly cleanResistance: number;
  /** ratio of the resistance to the clean one above which tubes are shut */
  readonly limit: number;
  /** ratio: standard uncertainty of a day's resistance against the baseline */
  readonly uncertainty: number;
  /** least number of shut tubes that stands over the limit; null where none of those tried does */
  readonly fewest: number | null;
  /** state by state, the clean field first */
  readonly states: readonly BlockedState[];
}

/** Flows at which the fouled field is solved, over the design flow: ratios. */
const FLOWS = [0.4, 0.7, 1, 1.3] as const;
/** A day is told as blocked where it stands so many standard uncertainties over the clean field. */
const OVER = 3;
/** Repeatability of an air flow meter against itself, a share; common practice, no source. */
const FLOW_REPEATS = 0.01;
/** Pa, repeatability of a pressure transmitter zeroed monthly; common practice, no source. */
const PRESSURE_REPEATS = 0.5;

/**
 * Pressure and flow with none, one, two, three, a quarter and half of the tubes shut, and with all
 * of them a third full of water; and the resistance above which a day's mean tells shut tubes: three
 * standard uncertainties over the clean field, both meters held against themselves. The tubes at
 * the far end of the first group are shut first.
 *
 * @param question headers, air path and fans
 */
export function blockedLimits(question: BlockedQuestion): BlockedLimits {
  const { tubes } = question.headers;
  const quarter = Math.max(1, Math.floor(tubes.count / 4));
  const counts = [...new Set([0, 1, 2, 3, quarter, Math.floor(tubes.count / 2)])]
    .filter((count) => count < tubes.count).sort((a, b) => a - b);
  const full: Filling = { depth: tubes.diameter, length: tubes.length };
  const points = counts.map((shut) => ({
    name: shut === 0 ? "all clean" : shut === 1 ? "one tube shut" : `${shut} tubes shut`,
    shut,
    ...pointWith(question, lastTubes(tubes.count, shut, full)),
  }));
  const third = { depth: tubes.diameter / 3, length: tubes.length };
  const wet = {
    name: "every tube a third full of water",
    shut: 0,
    ...pointWith(question, lastTubes(tubes.count, tubes.count, third)),
  };
  const clean = points[0]!;
  const cleanResistance = clean.pressure / clean.airFlow ** 2;
  const uncertainty = Math.hypot(
    Math.SQRT2 * PRESSURE_REPEATS / clean.pressure,
    2 * Math.SQRT2 * FLOW_REPEATS,
  );
  const limit = 1 + OVER * uncertainty;
  const states = [...points, wet].map((point): BlockedState => {
    const resistance = point.pressure / point.airFlow ** 2 / cleanResistance;
    return { ...point, resistance, found: resistance > limit };
  });
  const fewest = states.find(({ shut, found }) => shut > 0 && found)?.shut ?? null;
  return { cleanResistance, limit, uncertainty, fewest, states };
}

/** Fillings of so many tubes, from the last place of the field backwards. */
function lastTubes(count: number, filled: number, filling: Filling): ReadonlyMap<number, Filling> {
  return new Map(Array.from({ length: filled }, (_, k) => [count - 1 - k, filling]));
}

/** Where the fans meet the field with its fillings. */
function pointWith(
  { headers, path, curve }: BlockedQuestion,
  fillings: ReadonlyMap<number, Filling>,
): { readonly airFlow: number; readonly pressure: number } {
  const { inputs, tubes, state } = headers;
  const design = tubes.flowPerTube * tubes.count;
  const groups = headerGroups(inputs, tubes, state);
  const networks = groups.map(({ group, members }) => {
    const own = new Map(
      members.flatMap((tube, i) => {
        const filling = fillings.get(tube);
        return filling === undefined ? [] : [[i, filling] as const];
      }),
    );
    return groupNetwork(fouledGroup(group, own, tubes.flowPerTube * members.length));
  }).filter(({ tubes }) => tubes.some(({ open }) => open));
  const field = FLOWS.map((ratio) => ({
    airFlow: ratio * design,
    pressure: solveParallel(networks, ratio * design)[0]!.pressureDrop,
  }));
  const point = operatingPoint(curve, systemPressure({ ...path, field }));
  const airFlow = point.reached ? point.airFlow : design;
  return { airFlow, pressure: solveParallel(networks, airFlow)[0]!.pressureDrop };
}

/** Kinds of sensors that the limits stand on. */
export const BLOCKED_SENSORS = [findSensorKind("pressure"), findSensorKind("air-flow")] as const;
