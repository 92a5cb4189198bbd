import { assert, assertAlmostEquals } from "@std/assert";
import { houseModel, initialHouseState, stepHouse, withHeater } from "../../../lib/house/mod.ts";
import { freshEngine, soilModel } from "../../../lib/store/seasons/soil_model.ts";
import { runYear, startState } from "../../../lib/store/seasons/year.ts";
import { type StepReport, YEAR_STEPS } from "../../../lib/store/step_report.ts";
import { standInRequest } from "../stand_in.ts";

/** Hour of the year: noon on 2 July. */
const NOON = 4380;

/** Runs three hours of one fan mode from ground alike along the tubes; hands on every step. */
function run(
  given: { mode: -1 | 1; reverse: boolean; from: number; see: (r: StepReport) => void },
) {
  const request = standInRequest({ store: { slices: 4, reverse: given.reverse } });
  const house = withHeater(houseModel(request.houseInputs, request.climate), 0);
  const model = soilModel(request, house);
  const ledger = runYear(
    {
      site: model.site,
      inputs: request.inputs,
      climate: request.climate,
      wave: request.soil.wave,
      house,
      stepHouse,
      fan: true,
      schedule: new Int8Array(8760 * 4).fill(given.mode),
      from: given.from,
      hours: 3,
    },
    startState(model.site, freshEngine(model), initialHouseState(house)),
    given.see,
  );
  return { ledger, site: model.site };
}

/** Heat of the first slice over that of the last in the first step. */
function firstOverLast(mode: -1 | 1, reverse: boolean): number {
  let ratio = NaN;
  run({
    mode,
    reverse,
    from: mode === 1 ? NOON : 0,
    see: ({ heat }) => {
      const tubes = heat.length / 4;
      const slice = (k: number) =>
        heat.subarray(k * tubes, (k + 1) * tubes).reduce((sum, value) => sum + value, 0);
      if (Number.isNaN(ratio)) ratio = slice(0) / slice(3);
    },
  });
  return ratio;
}

Deno.test("air enters at the near end when charging, at the far end when discharging reversed", () => {
  // Property: in ground alike along the tubes the end where the air enters exchanges most
  assert(firstOverLast(1, true) > 1.05, "charging");
  assert(firstOverLast(1, false) > 1.05, "charging");
  assert(firstOverLast(-1, false) > 1.05, "discharging the same way");
  assert(firstOverLast(-1, true) < 1 / 1.05, "discharging reversed");
});

Deno.test("the fan's heat warms the air before the tubes", () => {
  // Property: energy of the air stream: what the walls get is what drawn air and fan bring less what
  // leaves, in every step, with the mean temperature of the house over the step
  let compared = 0;
  const seen: StepReport[] = [];
  const { site } = run({
    mode: -1,
    reverse: true,
    from: 0,
    see: (report) => seen.push({ ...report }),
  });
  assert(site.modes.charge.power / site.heatRate > 0.15, "a rise to be seen");
  for (const { house, outlet, sensible, air } of seen) {
    const entering = house.mean.airTemperature + air!.fanPower / air!.heatRate;
    assertAlmostEquals(sensible, air!.heatRate * (entering - outlet), 1e-6 * Math.abs(sensible));
    compared++;
  }
  assert(compared === 3 * 3600 / YEAR_STEPS[0]!);
});

Deno.test("charging draws the warm air of the ridge, by the share of full sun", () => {
  // Property: definition: 3 K at 800 W/m² above the air of the house, none in the dark
  const { climate, inputs } = standInRequest();
  for (const from of [NOON, NOON + 12]) {
    let first: StepReport | undefined;
    run({ mode: 1, reverse: true, from, see: (report) => first ??= { ...report } });
    const rise = inputs.stratification! * climate.globalHorizontal[from]! / 800;
    // by the mean air of the house over the step, as the tubes draw it
    assertAlmostEquals(first!.intake - first!.house.mean.airTemperature, rise, 1e-9);
    assert(from === NOON ? rise > 0.5 : rise === 0, `${rise} K`);
  }
});
