/** The tubes chapter run again with one thing changed. @module */
import { airProperties } from "../air/mod.ts";
import type { SoilProperties } from "../soil/types.ts";
import { tubesChapter, type TubesSurroundings } from "./compute.ts";
import { type HeatByLength, heatByLength } from "./heat_by_length.ts";
import { type MaterialRow, materialRows } from "./materials.ts";
import type { TubesInputs, TubesResult } from "./types.ts";
import { type FouledRow, fouledTubes } from "./water.ts";

/** Air flows tried, over the study's own. */
const FLOWS = [0.33, 0.5, 0.67, 0.83, 1, 1.25, 1.5, 2];
/** Numbers of tubes tried, over the study's own. */
const COUNTS = [0.5, 0.75, 1, 1.5, 2];

/**
 * The tubes chapter at multiples of the study's air flow.
 *
 * @param inputs `tubes` section of the study
 * @param surroundings house, air pressure and air temperature
 * @param factors ratios of the flow to the study's own
 */
export function tubesAtFlows(
  inputs: TubesInputs,
  surroundings: TubesSurroundings,
  factors: readonly number[] = FLOWS,
): TubesResult[] {
  return factors.map((factor) =>
    tubesChapter({ ...inputs, airFlow: inputs.airFlow * factor }, surroundings)
  );
}

/**
 * The tubes chapter at multiples of the study's number of tubes, same air flow; whole layers, none
 * twice.
 *
 * @param inputs `tubes` section of the study
 * @param surroundings house, air pressure and air temperature
 * @param factors ratios of the count to the study's own
 */
export function tubesAtCounts(
  inputs: TubesInputs,
  surroundings: TubesSurroundings,
  factors: readonly number[] = COUNTS,
): TubesResult[] {
  const { layers } = inputs;
  const counts = factors.map((factor) =>
    Math.max(layers, Math.round(inputs.count * factor / layers) * layers)
  );
  return [...new Set(counts)].map((count) => tubesChapter({ ...inputs, count }, surroundings));
}

/** What other tubes, flows, numbers and lengths would do, and tubes that are not clean. */
export interface TubesVariants {
  /** every product of data/tubes */
  readonly materials: readonly MaterialRow[];
  /** other air flows, rising */
  readonly flows: readonly TubesResult[];
  /** other numbers of tubes, rising */
  readonly counts: readonly TubesResult[];
  /** heat by length, a day's wave and ten days' */
  readonly lengths: readonly HeatByLength[];
  /** one bad tube */
  readonly fouled: readonly FouledRow[];
}

/**
 * All variants of a study's tubes.
 *
 * @param inputs `tubes` section of the study
 * @param surroundings house, air, and the properties of the soil
 * @param tubes result of the tubes chapter
 */
export function tubesVariants(
  inputs: TubesInputs,
  surroundings: TubesSurroundings & {
    readonly soil: Pick<SoilProperties, "conductivity" | "heatCapacity">;
  },
  tubes: TubesResult,
): TubesVariants {
  const { extraLosses, slope } = inputs;
  const air = airProperties(surroundings.airTemperature, surroundings.pressure);
  const { conductivity, heatCapacity } = surroundings.soil;
  return {
    materials: materialRows(tubes, { extraLosses, air }),
    flows: tubesAtFlows(inputs, surroundings),
    counts: tubesAtCounts(inputs, surroundings),
    lengths: heatByLength({ inputs, tubes, soil: { conductivity, heatCapacity }, air }),
    fouled: fouledTubes(tubes, { slope, air }),
  };
}
