/** When in the year the fan may run and the store may be charged. @module */
import { HOURS_PER_YEAR } from "../basics/mod.ts";
import { type AnnualWave, undisturbedTemperature } from "../soil/mod.ts";
import { seasonDays } from "../units/mod.ts";
import type { Allowed } from "./control.ts";
import type { StoreInputs } from "./types.ts";

/**
 * What the fan may do in each hour of the year: by the days of the study, and by the undisturbed ground
 * at the depth of the tubes, at the middle of each day.
 *
 * @param inputs store section of the study
 * @param wave undisturbed ground
 * @param depth m, of the tubes on average
 */
export function allowedByHour(
  inputs: StoreInputs,
  wave: AnnualWave,
  depth: number,
): readonly Allowed[] {
  const { fanSeason = "all year", chargeSeason = "all year" } = inputs;
  const { chargeBelowGround = Infinity } = inputs;
  const running = seasonDays(fanSeason);
  const charging = seasonDays(chargeSeason);
  const byDay = Array.from(running, (runs, day): Allowed => {
    if (runs === 0) return "nothing";
    const cool = undisturbedTemperature(wave, depth, day + 0.5) <= chargeBelowGround;
    return charging[day] === 1 && cool ? "both" : "discharge";
  });
  return Array.from({ length: HOURS_PER_YEAR }, (_, hour) => byDay[Math.floor(hour / 24)]!);
}
