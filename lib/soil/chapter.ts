/** The soil chapter: how warm is the ground, when, how deep? @module */
import { MONTH_DAYS } from "../basics/mod.ts";
import type { ClimateYear } from "../climate/types.ts";
import { soilNotices } from "./notices.ts";
import { soilProperties } from "./properties.ts";
import type { AnnualWave, SoilInputs, SoilResult } from "./types.ts";
import { fitWave, undisturbedTemperature, waveFrostDepth } from "./wave.ts";

/** m: depths of the monthly table. */
const DEPTHS = [0, 0.25, 0.5, 0.75, 1, 1.25, 1.5, 2, 2.5, 3, 4, 5, 7.5, 10];

/** Monthly means of the wave at one depth. */
function monthlyMeans(wave: AnnualWave, depth: number): number[] {
  let day = 0;
  return MONTH_DAYS.map((days) => {
    let sum = 0;
    for (let i = 0; i < days; i++) sum += undisturbedTemperature(wave, depth, day++ + 0.5);
    return sum / days;
  });
}

/**
 * Properties of the soil and temperature of the undisturbed ground.
 *
 * @param inputs `soil` section of the study
 * @param climate the year
 * @param tubeDepth middle of the tube layers, m
 */
export function soilChapter(
  inputs: SoilInputs,
  climate: ClimateYear,
  tubeDepth: number,
): SoilResult {
  const properties = soilProperties(inputs);
  const wave = fitWave(climate, properties, inputs.snowDepth);
  const byDepth = DEPTHS.map((depth) => monthlyMeans(wave, depth));
  const atTubes = Array.from(
    { length: 365 },
    (_, day) => undisturbedTemperature(wave, tubeDepth, day + 0.5),
  );
  const frostDepth = waveFrostDepth(wave);
  return {
    properties,
    wave,
    frostDepth,
    depths: DEPTHS,
    monthly: MONTH_DAYS.map((_, month) => byDepth.map((months) => months[month]!)),
    tubeDepth,
    temperatureAtTubeDepthMin: Math.min(...atTubes),
    temperatureAtTubeDepthMax: Math.max(...atTubes),
    notices: soilNotices({ inputs, properties, frostDepth, tubeDepth }),
  };
}
