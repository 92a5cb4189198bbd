/** The soil chapter: how warm is the ground, when, how deep? @module */
import { mean } from "d3-array";
import type { ClimateYear } from "../climate/types.ts";
import { MONTH_DAYS, monthlyMeansOfDays, requireInRange } from "../basics/mod.ts";
import { ANNUAL_MESH, groundAtDepth } from "./ground.ts";
import type { GroundYear } from "./ground.ts";
import { monthlyWave, waveMisfit } from "./ground_wave.ts";
import { typicalSnowDepth } from "./snow.ts";
import { soilNotices } from "./notices.ts";
import { ownGround } from "./own_ground.ts";
import { soilSensitivity } from "./sensitivity.ts";
import type { AnnualWave, GroundDifference, SoilInputs, SoilResult } from "./types.ts";
import { fitWave, waveFrostDepth } from "./wave.ts";

/** m: depths of the monthly table. */
const DEPTHS = [0, 0.25, 0.5, 0.75, 1, 1.25, 1.5, 2, 2.5, 3, 4, 5, 7.5, 10];
/** m: depths of the depth and day map. */
const FIELD_DEPTHS = Array.from({ length: 26 }, (_, i) => i * 0.2);

/** Months as rows from one list of months for each depth. */
function byMonth(byDepth: readonly (readonly number[])[]): number[][] {
  return MONTH_DAYS.map((_, month) => byDepth.map((months) => months[month]!));
}

function difference(
  ground: GroundYear,
  waves: { readonly wave: AnnualWave; readonly climateWave: AnnualWave },
  tubeDepth: number,
): GroundDifference {
  const column = groundAtDepth(ground, tubeDepth);
  const months = monthlyMeansOfDays(column);
  const waveMonths = monthlyWave(waves.climateWave, tubeDepth);
  const frost = waveFrostDepth(waves.climateWave);
  return {
    mean: mean(column)! - waves.climateWave.mean,
    largest: Math.max(...months.map((value, month) => Math.abs(value - waveMonths[month]!))),
    waveFrostDepth: Number.isFinite(frost) ? frost : null,
    waveFit: waveMisfit(ground, waves.wave),
  };
}

/**
 * Properties of the soil and temperature of the undisturbed ground, two ways: an annual wave fitted
 * to the air temperature, and a column through the years with surface balance, snow and frost. The
 * column gives the tables and the wave the other chapters use; the first wave stands beside it.
 *
 * @param inputs `soil` section of the study
 * @param climate the year
 * @param tubeDepth middle of the tube layers, m
 * @throws {InputError} where the water does not fit into the pores or the texture is unknown
 * @throws {OutOfRangeError} where the tubes lie below the column or the snow depth is absurd
 */
export function soilChapter(
  inputs: SoilInputs,
  climate: ClimateYear,
  tubeDepth: number,
): SoilResult {
  requireInRange("depth of the tubes", tubeDepth, 0, ANNUAL_MESH.depth, "m");
  const { properties, weather, ground, wave } = ownGround(inputs, climate);
  const climateWave = fitWave(climate, properties, inputs.snowDepth);
  const atTubes = groundAtDepth(ground, tubeDepth);
  const compared = difference(ground, { wave, climateWave }, tubeDepth);
  const { frostDepth } = ground;
  return {
    properties,
    wave,
    climateWave,
    frostDepth,
    depths: DEPTHS,
    monthly: byMonth(DEPTHS.map((depth) => monthlyMeansOfDays(groundAtDepth(ground, depth)))),
    waveMonthly: byMonth(DEPTHS.map((depth) => monthlyWave(climateWave, depth))),
    tubeDepth,
    temperatureAtTubeDepthMin: Math.min(...atTubes),
    temperatureAtTubeDepthMax: Math.max(...atTubes),
    field: {
      depths: FIELD_DEPTHS,
      temperature: FIELD_DEPTHS.map((depth) => groundAtDepth(ground, depth)),
    },
    snowDepth: ground.snow.depth,
    difference: compared,
    sensitivity: soilSensitivity({ inputs, weather, ground, tubeDepth }),
    balanceResidual: ground.ledger.residual,
    spinUpYears: ground.years,
    notices: soilNotices({
      inputs,
      properties,
      frostDepth,
      tubeDepth,
      snowReached: typicalSnowDepth(ground.snow),
      difference: compared,
    }),
  };
}
