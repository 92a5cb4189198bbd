import { assert, assertLess } from "@std/assert";
import { houseModel, withHeater } from "../../../lib/house/mod.ts";
import { settledYear } from "../../../lib/store/seasons/settled_year.ts";
import { soilModel } from "../../../lib/store/seasons/soil_model.ts";
import { YEAR_STEPS } from "../../../lib/store/step_report.ts";
import { formulaClimate, standInRequest } from "../stand_in.ts";

const request = standInRequest({
  climate: formulaClimate({ mean: 2 }),
  store: { slices: 2, spinUpYears: 0 },
});

Deno.test("years that settle the ground in long steps lead to the year that those in its own steps lead to", () => {
  // Property: free and held, with the fan and without; heat within a thousandth, air within 0.02 K
  const house = houseModel(request.houseInputs, request.climate);
  const usual = soilModel(request, house);
  const own = { ...usual, steps: YEAR_STEPS };
  for (const power of [0, Infinity]) {
    for (const fan of [true, false]) {
      const run = (model: typeof usual) =>
        settledYear({ request, model, house: withHeater(house, power), fan, jumps: 3 });
      const [one, other] = [run(usual), run(own)];
      const [air, others] = [one.year.airTemperature, other.year.airTemperature];
      const square = air.reduce((sum, value, hour) => sum + (value - others[hour]!) ** 2, 0);
      assert(square > 0, "both settled in the same steps");
      assertLess(Math.sqrt(square / air.length), 0.02);
      for (const key of ["heatIn", "heatOut", "heater", "outdoor"] as const) {
        const [found, expected] = [one.ledger[key], other.ledger[key]];
        assertLess(Math.abs(found - expected), 1e-3 * other.ledger.throughput, key);
      }
    }
  }
});
