/** The undisturbed ground of a study's own soil. @module */
import type { ClimateYear } from "../climate/types.ts";
import { type GroundYear, undisturbedGround } from "./ground.ts";
import { fitWaveToGround } from "./ground_wave.ts";
import { studyLayers } from "./layers.ts";
import { soilProperties } from "./properties.ts";
import type { AnnualWave, SoilInputs, SoilResult } from "./types.ts";
import { type DailyWeather, dailyWeather } from "./weather.ts";

/** Soil and ground that the rest of the job hangs on. */
export interface OwnGround {
  readonly properties: SoilResult["properties"];
  readonly weather: DailyWeather;
  /** the column through the years until they repeat */
  readonly ground: GroundYear;
  /** the annual wave fitted to the column, which the later chapters use */
  readonly wave: AnnualWave;
}

/**
 * Runs the column of a study's soil and fits the annual wave to it.
 *
 * @param inputs `soil` section of the study
 * @param climate the year
 * @throws {InputError} where the water does not fit into the pores or the texture is unknown
 */
export function ownGround(inputs: SoilInputs, climate: ClimateYear): OwnGround {
  const properties = soilProperties(inputs);
  const weather = dailyWeather(climate);
  const { snowDepth } = inputs;
  const ground = undisturbedGround({ weather, layers: studyLayers(inputs), snowDepth });
  return { properties, weather, ground, wave: fitWaveToGround(ground, properties.diffusivity) };
}
