import { assertEquals, assertLess } from "@std/assert";
import { houseModel, withHeater } from "../../lib/house/mod.ts";
import { alone, samePlain } from "../../lib/basics/mod.ts";
import { baselineRequest, baselineYears } from "../../lib/store/baseline.ts";
import { baselineTask, reducedBaselines } from "../../lib/store/runs.ts";
import { storeChapter } from "../../lib/store/mod.ts";
import { settledYear } from "../../lib/store/seasons/settled_year.ts";
import { soilModel } from "../../lib/store/seasons/soil_model.ts";
import { formulaClimate, standInRequest } from "./stand_in.ts";

/** Never warm enough to charge, never cold enough to discharge. */
const NEVER = { chargeAbove: 99, dischargeBelow: -99 };

// 9 m of tube under 12 m of house: three slices and a lane for the rest of the floor
const request = standInRequest({
  climate: formulaClimate({ mean: -1 }),
  tubes: { length: 9 },
  store: { slices: 3, spinUpYears: 0, ...NEVER },
});
const house = houseModel(request.houseInputs, request.climate);
const model = soilModel(request, house);
const { free, held } = baselineYears(request, model, house);

/** K, largest difference over the year. */
function apart(one: Float64Array, other: Float64Array): number {
  return one.reduce((most, value, hour) => Math.max(most, Math.abs(value - other[hour]!)), 0);
}

Deno.test("with the fan never on, one lane of all the ground is all slices and the rest, to rounding", () => {
  // Property: equal slices do the same; soil that freezes included
  assertEquals(model.site.lengths.length, 4);
  for (const [power, one] of [[0, free], [Infinity, held]] as const) {
    const many = settledYear({
      request,
      model,
      house: withHeater(house, power),
      fan: false,
      jumps: 4,
    });
    assertLess(apart(one.year.airTemperature, many.year.airTemperature), 1e-8);
    assertLess(Math.abs(one.ledger.heater - many.ledger.heater), 1e-9 * many.ledger.throughput);
    assertLess(Math.abs(one.ledger.outdoor - many.ledger.outdoor), 1e-9 * many.ledger.throughput);
  }
});

Deno.test("a fan that never starts is no store", () => {
  // Property: same start, same years: the same house to rounding, in free and heated years
  for (const [power, one] of [[0, free], [Infinity, held]] as const) {
    const idle = settledYear({
      request,
      model,
      house: withHeater(house, power),
      fan: true,
      jumps: 4,
    });
    assertEquals(idle.ledger.fanEnergy, 0);
    assertLess(apart(one.year.airTemperature, idle.year.airTemperature), 1e-8);
  }
  // the chapter's own year settles from other starts: what it calls saved is its settling
  const chapter = storeChapter(request);
  assertEquals([chapter.heatIn, chapter.heatOut, chapter.fanEnergy], [0, 0, 0]);
  assertLess(Math.abs(chapter.savedHeat), 2e-4 * chapter.backupHeatNoFan);
  assertLess(Math.abs(chapter.coldestHour - chapter.coldestHourNoFan), 0.01);
});

Deno.test("the baseline repeats", () => {
  // Property: three more years with a jump change house air by less than a two-hundredth of a kelvin in
  // any hour; what moves is the hour in which a zone freezes
  const length = model.site.lengths.reduce((sum, value) => sum + value, 0);
  const later = settledYear({
    request,
    model: { ...model, site: { ...model.site, slices: 1, lengths: Float64Array.of(length) } },
    house: withHeater(house, 0),
    fan: false,
    jumps: 7,
  });
  assertLess(apart(free.year.airTemperature, later.year.airTemperature), 0.005);
});

Deno.test("the years without a store hang on house and soil alone, and are asked for once", () => {
  // Property: other tubes, fan and control leave the question as it is; another house does not
  const { inputs, tubes, fan, tubesInputs } = request;
  const other = {
    ...request,
    inputs: { ...inputs, chargeStart: inputs.chargeStart + 2, reverse: !inputs.reverse, slices: 3 },
    tubes: { ...tubes, length: 0.8 * tubes.length, filmCoefficient: 2 * tubes.filmCoefficient },
    tubesInputs: { ...tubesInputs, airFlow: 2 * tubesInputs.airFlow },
    fan: { ...fan, power: 2 * fan.power },
  };
  assertEquals(samePlain(baselineRequest(other), baselineRequest(request)), true);
  const houseInputs = { ...request.houseInputs, leakage: 2 * request.houseInputs.leakage };
  const leaky = { ...request, houseInputs };
  assertEquals(samePlain(baselineRequest(leaky), baselineRequest(request)), false);
  const [bare] = alone(reducedBaselines([request]));
  const asked = baselineTask.run({ ...bare!, heated: true });
  assertLess(Math.abs(asked.ledger.heater / held.ledger.heater - 1), 1e-9);
  asked.year.airTemperature.forEach((air, hour) =>
    assertLess(Math.abs(air - held.year.airTemperature[hour]!), 1e-6)
  );
});
