import { assert, assertAlmostEquals, assertLess } from "@std/assert";
import { houseModel, initialHouseState, stepHouse, withHeater } from "../../../lib/house/mod.ts";
import { adiEngine, uniformState } from "../../../lib/store/solver/full/engine.ts";
import { balanceResidual } from "../../../lib/store/ledger/ledger.ts";
import { reducedEngine } from "../../../lib/store/solver/reduced/engine.ts";
import { reducedState } from "../../../lib/store/solver/reduced/fields.ts";
import { reduceSlice } from "../../../lib/store/solver/reduced/reduction.ts";
import { storeSite } from "../../../lib/store/site.ts";
import { freshEngine, soilModel } from "../../../lib/store/seasons/soil_model.ts";
import { yearsUntilPeriodic } from "../../../lib/store/seasons/spin_up.ts";
import { type HouseWay, houseWays } from "../../../lib/store/variants/ways.ts";
import type { StoreInputs } from "../../../lib/store/types.ts";
import { STORE_VARIANTS, storeVariants } from "../../../lib/store/variants/variants.ts";
import { runYear, startState, type YearSetting } from "../../../lib/store/seasons/year.ts";
import { formulaClimate, standInRequest } from "../stand_in.ts";

const request = standInRequest({ store: { slices: 2 } });
const house = withHeater(houseModel(request.houseInputs, request.climate), 0);
const model = soilModel(request, house);
const setting: YearSetting = {
  site: model.site,
  inputs: request.inputs,
  climate: request.climate,
  wave: request.soil.wave,
  house,
  stepHouse,
  fan: true,
};

Deno.test("runYear() closes the ledger to 1e-9 of the throughput over ten years", () => {
  // Property: energy is conserved, errors do not pile up
  const engine = freshEngine(model);
  const state = startState(model.site, engine, initialHouseState(house));
  let rest = 0;
  let throughput = 0;
  for (let year = 0; year < 10; year++) {
    const ledger = runYear(setting, state);
    rest += balanceResidual(ledger) * ledger.throughput;
    throughput += ledger.throughput;
  }
  assertLess(Math.abs(rest) / throughput, 1e-9);
});

Deno.test("runYear() gives the house what the tubes give, wet walls included", () => {
  // Property: heat to the house air = − sensible heat of the walls + heat of the fan
  const engine = freshEngine(model);
  const state = startState(model.site, engine, initialHouseState(house));
  let toHouse = 0;
  let fromWalls = 0;
  let running = 0;
  const floor = { house: 0, soil: 0 };
  runYear({ ...setting, hours: 2000, from: 5000 }, state, (report) => {
    toHouse += report.house.flows.store * report.seconds;
    fromWalls -= report.sensible * report.seconds;
    running += report.fanPower * report.seconds;
    floor.house -= report.house.flows.floor * report.seconds;
    floor.soil += report.floor * report.seconds;
  });
  assertAlmostEquals(
    toHouse,
    fromWalls + running,
    1e-6 * Math.abs(fromWalls),
  );
  assertAlmostEquals(floor.house, floor.soil, 1e-3 * Math.abs(floor.soil));
});

Deno.test("the reduced year follows the full model on one fan schedule, in a climate of its own", () => {
  // Property: two solvers of one problem, both in steps of 100 s. 0.01 K and 0.1 % claimed.
  const warm = formulaClimate({ mean: 9, swing: 10 });
  const other = standInRequest({ climate: warm, store: { slices: 2 } });
  const otherHouse = withHeater(houseModel(other.houseInputs, warm), 0);
  const site = storeSite(other, otherHouse.floorFilm, otherHouse.geometry.floorArea);
  const steps = [100, 3600];
  const lanes = site.lengths.length;
  const start = site.operator.capacity.map(() => 9);
  const slice = reduceSlice(site.operator);
  const full = adiEngine(site.operator, lanes, steps);
  full.load(uniformState(lanes, start));
  const reduced = () => {
    const engine = reducedEngine(slice, lanes, steps);
    engine.load(reducedState(slice, lanes, start));
    return engine;
  };
  const schedule = new Int8Array(8760 * 36);
  // the first run only records the schedule; a recorded one is run in short steps throughout
  const outlets = [reduced(), full, reduced()].map((engine, k) => {
    const seen: number[] = [];
    let hour = -1;
    let from = 0;
    const ledger = runYear(
      {
        ...setting,
        site,
        inputs: other.inputs,
        climate: warm,
        wave: other.soil.wave,
        house: otherHouse,
        from: 1500,
        hours: 700,
        schedule: k === 0 ? undefined : schedule,
      },
      startState(site, engine, initialHouseState(otherHouse)),
      (report) => {
        if (report.hour !== hour) from = 0;
        hour = report.hour;
        const first = 36 * hour + from / 100;
        from += report.seconds;
        if (k === 0) schedule.fill(report.mode, first, 36 * hour + from / 100);
        if (report.mode !== 0) seen.push(report.outlet);
      },
    );
    return { seen, ledger };
  });
  const [, whole, few] = outlets as [typeof outlets[0], typeof outlets[0], typeof outlets[0]];
  assert(whole.seen.length > 500 && whole.seen.length === few.seen.length);
  const square = whole.seen.reduce((sum, value, k) => sum + (value - few.seen[k]!) ** 2, 0);
  assertLess(Math.sqrt(square / whole.seen.length), 0.01);
  for (const key of ["heatIn", "heatOut", "latentIn", "floor"] as const) {
    const [a, b] = [whole.ledger[key], few.ledger[key]];
    assertAlmostEquals(b, a, 0.001 * Math.max(Math.abs(a), 0.1 * whole.ledger.heatIn), key);
  }
});

Deno.test("yearsUntilPeriodic() carries the last ratio on", () => {
  // Property: a geometric approach 100(1 − 0.5^n) is within 2 % after six years
  const years = [1, 2, 3].map((n) => 100 * (1 - 0.5 ** n));
  assertAlmostEquals(yearsUntilPeriodic(years, 100), 6, 0);
  assertAlmostEquals(yearsUntilPeriodic([99, 100, 100], 100), 1, 0);
});

Deno.test("storeVariants() puts more heat into longer tubes, less into drier soil", () => {
  // Property: sense of the answer, as measured by Li et al. 2019 and Agrawal et al. 2020
  // [agrawal-2020]
  const rows = storeVariants(
    standInRequest({ store: { slices: 1, spinUpYears: 0 } }),
    undefined,
    STORE_VARIANTS.filter(({ name }) => /planned|longer|drier/.test(name)),
  );
  const heat = (name: string) => rows.find((row) => row.name.includes(name))!.heatIn;
  assert(heat("longer") > heat("planned"));
  assert(heat("drier") < heat("planned"));
});

Deno.test("houseWays() finds store and curtain each better than nothing, both best", () => {
  // Property: sense of the answer; insulation and store each keep the house warmer
  const ways = houseWays(standInRequest({ store: { slices: 1, spinUpYears: 0 } }));
  const [none, curtain, store, both] = ways as [HouseWay, HouseWay, HouseWay, HouseWay];
  for (const key of ["hoursBelowFreezing", "backupHeat"] as const) {
    assert(curtain[key] < none[key] && store[key] < none[key], key);
    assert(both[key] < curtain[key] && both[key] < store[key], key);
  }
});

Deno.test("a gravel bed of less heat capacity takes less heat, a plate collector gives more", () => {
  // Property: sense of the answer over six summer weeks from the same ground
  const heatIn = (store: Partial<StoreInputs>) => {
    const other = standInRequest({ store: { slices: 1, spinUpYears: 0, ...store } });
    const soil = soilModel(other, house);
    const state = startState(soil.site, freshEngine(soil), initialHouseState(house));
    return runYear(
      { ...setting, site: soil.site, inputs: other.inputs, from: 3000, hours: 1000 },
      state,
    )
      .heatIn;
  };
  const plain = heatIn({});
  assert(heatIn({ gravelBed: { margin: 0.3, conductivity: 0.5, heatCapacity: 1.4e6 } }) < plain);
  const plate = { holeDiameter: 0.0016, pitch: 0.017, absorptance: 0.95, emissivity: 0.9 };
  const place = {
    tilt: 90,
    azimuth: undefined,
    cover: "single-glass",
    ductLength: 4,
    ductLoss: 0.6,
  };
  for (const where of ["inside", "outside"] as const) {
    assert(heatIn({ collector: { ...plate, ...place, place: where, area: 9 } }) > plain, where);
  }
});
