/** The same field and fans in thinner air. @module */
import { DRY_AIR_HEAT_CAPACITY, standardPressure } from "../air/mod.ts";
import { headersChapter, type HeadersInputs } from "../headers/mod.ts";
import { tubesChapter, type TubesInputs, type TubesSurroundings } from "../tubes/mod.ts";
import { type FanTrial, fanTrial } from "./trial.ts";
import type { FanInputs } from "./types.ts";

/** The same field and fans at one elevation. */
export interface ElevationTrial extends FanTrial {
  /** m over the sea */
  readonly elevation: number;
  /** W for each kelvin that the air is cooled: flow × density × heat capacity; null without a point */
  readonly capacityRate: number | null;
}

/** House, tubes and headers of a study, to be worked out again in thinner air. */
export interface HigherField {
  /** length and width of the house, m */
  readonly house: TubesSurroundings["house"];
  /** `tubes` section of the study */
  readonly tubesInputs: TubesInputs;
  /** `headers` section of the study */
  readonly headersInputs: HeadersInputs;
  /** degC of the air in the tubes */
  readonly airTemperature: number;
}

/** m over the sea */
const ELEVATIONS = [0, 1000, 2000, 3000];

/**
 * The study's field and fans at sea level, at 1000, 2000 and 3000 m, in standard air pressure.
 *
 * @param inputs `fan` section of the study
 * @param field house, tubes and headers
 */
export function fanElevations(inputs: FanInputs, field: HigherField): ElevationTrial[] {
  return ELEVATIONS.map((elevation) => {
    const pressure = standardPressure(elevation);
    const state = { pressure, airTemperature: field.airTemperature };
    const { tubesInputs } = field;
    const tubes = tubesChapter(tubesInputs, { house: field.house, ...state });
    const headers = headersChapter(field.headersInputs, tubes, state);
    const trial = fanTrial(`${elevation} m`, inputs, { tubesInputs, headers, ...state });
    const { result } = trial;
    const capacityRate = result === null
      ? null
      : result.airFlow * result.density * DRY_AIR_HEAT_CAPACITY;
    return { ...trial, elevation, capacityRate };
  });
}
