import { assert, assertAlmostEquals, assertLess } from "@std/assert";
import { mean } from "d3-array";
import { houseModel, initialHouseState, stepHouse, withHeater } from "../../../lib/house/mod.ts";
import { reducedEngine } from "../../../lib/store/solver/reduced/engine.ts";
import { reducedState } from "../../../lib/store/solver/reduced/fields.ts";
import { soilModel } from "../../../lib/store/seasons/soil_model.ts";
import { runYear, startState } from "../../../lib/store/seasons/year.ts";
import { type StepReport, YEAR_STEPS } from "../../../lib/store/step_report.ts";
import { standInRequest } from "../stand_in.ts";

const request = standInRequest({ store: { slices: 2 } });
const house = houseModel(request.houseInputs, request.climate);
const model = soilModel(request, house);

/** A year of the tests' store from undisturbed ground. */
function year(
  given: {
    readonly steps: readonly number[];
    readonly shortSteps: boolean;
    readonly heater: number;
    readonly see?: (report: StepReport) => void;
  },
) {
  const engine = reducedEngine(model.slice, model.site.lengths.length, given.steps);
  engine.load(reducedState(model.slice, engine.lanes, model.undisturbed));
  const air = new Float64Array(8760);
  const heated = withHeater(house, given.heater);
  const ledger = runYear(
    {
      site: model.site,
      inputs: request.inputs,
      climate: request.climate,
      wave: request.soil.wave,
      house: heated,
      stepHouse,
      fan: true,
      shortSteps: given.shortSteps,
    },
    startState(model.site, engine, initialHouseState(heated)),
    (report) => {
      air[report.hour]! += report.house.mean.airTemperature * report.seconds / 3600;
      given.see?.(report);
    },
  );
  return { ledger, coldest: mean(air.toSorted().subarray(0, 24))! };
}

Deno.test("the steps of a year cost at most 0.5 % of its heat and 0.1 K of its coldest day's hours", () => {
  // Property: the same year in steps of 100 s in every hour, thermostat included; the 24
  // coldest hours, for in a single one the fan may run in one year and rest in the other
  for (const heater of [0, Infinity]) {
    const production = year({ steps: YEAR_STEPS, shortSteps: false, heater });
    const fine = year({ steps: [100, 3600], shortSteps: true, heater });
    const relative = (of: "heatIn" | "heater") =>
      Math.abs(production.ledger[of] / fine.ledger[of] - 1);
    assertLess(relative("heatIn"), 0.005, `heat in, heater ${heater}`);
    // a heated house hovers about the limit at which discharge starts: little heat comes out, and how
    // much hangs on the step by 1 % of the heat in
    const out = (production.ledger.heatOut - fine.ledger.heatOut) / fine.ledger.heatIn;
    assertLess(Math.abs(out), heater > 0 ? 0.012 : 0.005, `heat out, heater ${heater}`);
    if (heater > 0) assertLess(relative("heater"), 0.005, "back-up heat");
    assertAlmostEquals(production.coldest, fine.coldest, 0.1);
  }
});

Deno.test("the fan switches between the longer steps, never sooner than its shortest run", () => {
  // Property: steps fill each hour; a mode lasts at least minimumRun
  const filled = new Float64Array(8760);
  let [mode, lasted, between] = [0, Infinity, 0];
  year({
    steps: YEAR_STEPS,
    shortSteps: false,
    heater: 0,
    see: (report) => {
      if (report.mode !== mode) {
        assert(lasted >= request.inputs.minimumRun, `hour ${report.hour}: ${lasted} s`);
        if (filled[report.hour]! % 600 !== 0) between++;
        [mode, lasted] = [report.mode, 0];
      }
      lasted += report.seconds;
      filled[report.hour]! += report.seconds;
    },
  });
  assert(filled.every((seconds) => seconds === 3600));
  assert(between > 100, `${between} switches between longer steps`);
});
