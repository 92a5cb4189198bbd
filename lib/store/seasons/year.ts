/** One year of house, tubes and soil together, hour by hour. @module */
import { sum } from "d3-array";
import { DAY, HOUR, HOURS_PER_YEAR } from "../../basics/mod.ts";
import { undisturbedTemperature } from "../../soil/mod.ts";
import { closeLedger, openLedger, type SoilLedger } from "../ledger/ledger.ts";
import type { YearSetting, YearState } from "./year_state.ts";
import type { StepListener } from "../step_report.ts";
import { stepStore } from "./year_step.ts";
import { yearWork } from "./year_work.ts";
export * from "./year_state.ts";

/**
 * Runs one year and returns the soil's ledger.
 *
 * Each step: the soil is predicted without tube heat; the air is marched to learn what the tubes
 * would give at the present house temperature; the house takes one implicit step with that and its
 * slope; the air is marched again with the temperature the house really took; the soil takes the
 * heat. What the wet march differs from its straight line is owed to the next step, so nothing is
 * lost.
 */
export function runYear(
  setting: YearSetting,
  state: YearState,
  listen?: StepListener,
): SoilLedger {
  const { site, wave } = setting;
  const { engine } = state;
  const ledger = openLedger(site, engine);
  const work = yearWork(setting, state, ledger, listen);
  const meshDepth = sum(site.mesh.heights);
  const from = setting.from ?? 0;
  const hours = setting.hours ?? HOURS_PER_YEAR;
  for (let count = 0; count < hours; count++) {
    const hour = (from + count) % HOURS_PER_YEAR;
    const day = (hour + 0.5) * HOUR / DAY;
    work.outdoor.fill(undisturbedTemperature(wave, 0, day));
    work.deep.fill(undisturbedTemperature(wave, meshDepth, day));
    for (let from = 0; from < HOUR;) from += stepStore(work, hour, from);
  }
  closeLedger(ledger, site, engine);
  return ledger;
}
