/** Speed of the soil engines: hours of sixteen slices, years of nine; compare within one run only. */
import { adiEngine, uniformState } from "../../lib/store/solver/full/engine.ts";
import { reducedEngine } from "../../lib/store/solver/reduced/engine.ts";
import { reducedState } from "../../lib/store/solver/reduced/fields.ts";
import { reduceSlice } from "../../lib/store/solver/reduced/reduction.ts";
import { freezingZones } from "../../lib/store/ground/zones.ts";
import { houseModel, withHeater } from "../../lib/house/mod.ts";
import { settledYear } from "../../lib/store/seasons/settled_year.ts";
import { soilModel } from "../../lib/store/seasons/soil_model.ts";
import { standInRequest } from "../store/stand_in.ts";
import { benchSite, runHours, siteOf, SLICES } from "./store_case.ts";

const site = benchSite();
const start = site.operator.capacity.map(() => 8);
const full = adiEngine(site.operator, SLICES, [3600]);
full.load(uniformState(SLICES, start));
const slice = reduceSlice(site.operator);
const reduced = reducedEngine(slice, SLICES, [3600]);
reduced.load(reducedState(slice, SLICES, start));

Deno.bench("full model, 24 h of 16 slices", { group: "store", baseline: true }, () => {
  runHours(site, full, 24);
});

Deno.bench("reduced model, 24 h of 16 slices", { group: "store" }, () => {
  runHours(site, reduced, 24);
});

Deno.bench("reducing the slice", { group: "store build" }, () => {
  reduceSlice(site.operator);
});

for (const tubes of [10, 40, 100, 200, 400]) {
  Deno.bench(`reducing a slice of ${tubes} tubes that freezes`, {
    group: "reduction by tubes",
    baseline: tubes === 10,
    n: 2,
    warmup: 1,
  }, (timer) => {
    const { mesh, operator } = siteOf(tubes);
    const zones = freezingZones(mesh, operator);
    timer.start();
    reduceSlice(operator, undefined, zones);
    timer.end();
  });
}

const request = standInRequest({ store: { slices: 9 } });
const house = withHeater(houseModel(request.houseInputs, request.climate), 0);
const model = soilModel(request, house);

Deno.bench(
  "settled year of nine slices, freezing, three years run",
  { group: "store year" },
  () => {
    settledYear({ request, model, house, fan: true });
  },
);

Deno.bench("the same with the fan never on", { group: "store year" }, () => {
  settledYear({ request, model, house, fan: false });
});
