/** How far the vents open: against heat, and against damp. @module */
import { vapourPressure } from "../../air/mod.ts";
import type { HouseModel } from "../types.ts";
import { endTemperature } from "./means.ts";
import { quickSaturationOverWater } from "./saturation_table.ts";
import type { StepTerms } from "./step_terms.ts";
import { fallingRoot, type Search, solveTemperature, tryAt } from "./trial.ts";
import type { VapourBalance } from "./vapour.ts";

/** Ratio by which damp may make the balance fall slower with the opening than air alone would. */
const STEEPEST = 10;

/** Share of an opening to which it is found, for each kelvin to which a temperature is. */
const FINER = 0.01;

/** Opening that holds the air at a temperature, 0 to 1. */
export function openingFor(
  terms: StepTerms,
  temperature: number,
  vapour: VapourBalance,
  search: Search,
): number {
  const pull = terms.ventFlow * terms.heatCapacity * (temperature - terms.outside);
  if (pull <= 0) return 0;
  const closed = tryAt(terms, temperature, 0, vapour);
  if (closed <= 0) return 0;
  if (tryAt(terms, temperature, 1, vapour) >= 0) return 1;
  const root = fallingRoot((opening) => tryAt(terms, temperature, opening, vapour), {
    at: Math.min(1, closed / pull),
    steep: pull,
    slope: pull / STEEPEST,
    low: 0,
    high: 1,
    enough: FINER * search.enough,
  });
  return Math.min(1, Math.max(0, root.at));
}

function humidity(terms: StepTerms, temperature: number, vapour: VapourBalance): number {
  return vapourPressure(vapour.humidityRatio, terms.pressure) /
    quickSaturationOverWater(temperature);
}

/** What the control of one step keeps to. */
export interface Limits {
  readonly inputs: HouseModel["inputs"];
  /** degC of the heater in this hour */
  readonly setPoint: number;
  /** W that the heater can give in this hour */
  readonly heaterPower: number;
}

/** Where the vents come to rest. */
export interface Settled {
  /** degC of the air, mean over the step */
  readonly temperature: number;
  /** 0 to 1 */
  readonly opening: number;
}

/** Least opening that brings the humidity down to the limit without chilling the house. */
export function purge(
  terms: StepTerms,
  settled: Settled,
  limits: Limits,
  vapour: VapourBalance,
  search: Search,
): Settled {
  const { inputs, setPoint } = limits;
  const limit = inputs.purgeHumidity;
  const dryer = vapour.humidityRatio > terms.outsideRatio;
  const warm = settled.temperature > setPoint;
  if (!dryer || !warm || humidity(terms, settled.temperature, vapour) <= limit) return settled;
  let [low, high] = [settled.opening, 1];
  let best = settled;
  for (let trial = 0; trial < 8; trial++) {
    const opening = trial === 0 ? low + 0.05 * (high - low) : (low + high) / 2;
    const temperature = solveTemperature(terms, opening, 0, vapour, search);
    const cold = endTemperature(terms, temperature) < setPoint;
    const damp = humidity(terms, temperature, vapour) > limit;
    if (!cold) best = { temperature, opening };
    if (cold || !damp) high = opening;
    else low = opening;
  }
  return best;
}
