// Property: same key, same winter; a fan that never starts is no store; a start on 1 July is as good as a chain
import { assert, assertAlmostEquals, assertEquals } from "@std/assert";
import { alone, FIRST_OF_JULY } from "../../../lib/basics/mod.ts";
import { makeWinter, plainWeather, winterClimate } from "../../../lib/climate/mod.ts";
import { houseModel, withHeater } from "../../../lib/house/mod.ts";
import { reducedStores } from "../../../lib/store/runs.ts";
import { settledSetting } from "../../../lib/store/seasons/settled_year.ts";
import { freshEngine, soilModel } from "../../../lib/store/seasons/soil_model.ts";
import { runYear } from "../../../lib/store/seasons/year.ts";
import { firstOfJuly, stateOf } from "../../../lib/store/winters/start.ts";
import { wintersTask, winterSteps } from "../../../lib/store/winters/mod.ts";
import { ALDERSETT, NORMALS, sampleYear } from "../../climate/sample.ts";
import { standInRequest } from "../stand_in.ts";

const SET = { normals: NORMALS, place: ALDERSETT, seed: 4 };
const small = (store: Parameters<typeof standInRequest>[0] = {}) =>
  standInRequest({
    climate: plainWeather(sampleYear(1)),
    ...store,
    store: { slices: 1, spinUpYears: 0, ...store?.store },
    tubes: { count: 10, layers: 1, airFlow: 0.25 },
  });
const three = alone(winterSteps(small(), SET, 3));

Deno.test("a winter is the same whatever the count and whoever runs it in which batch", () => {
  const pieces: Parameters<typeof wintersTask.run>[0][] = [];
  const steps = winterSteps(small(), SET, 3);
  let turn = steps.next();
  while (turn.done !== true) {
    turn = steps.next(turn.value.map(({ task, question }) => {
      if (task.name === wintersTask.name) pieces.push(question as typeof pieces[number]);
      return task.run(question as never);
    }));
  }
  assertEquals(pieces.length, 1);
  assertEquals(wintersTask.run({ ...pieces[0]!, from: 2, count: 1 }), [three[2]!]);
  assertEquals(alone(winterSteps(small(), SET, 1)), [three[0]!]);
});

Deno.test("winters differ, the store warms the coldest hour and saves heat in each", () => {
  assert(new Set(three.map(({ coldestOutdoors }) => coldestOutdoors)).size === 3);
  for (const { coldestOutdoors, withStore, without } of three) {
    assert(withStore.coldestHour > without.coldestHour);
    assert(without.coldestHour > coldestOutdoors);
    assert(withStore.backupHeat < without.backupHeat);
    assert(withStore.fanEnergy > 0 && without.fanEnergy === 0);
  }
});

Deno.test("a fan that never starts is no store in every winter", () => {
  const rests = small({ store: { chargeAbove: 99, dischargeBelow: -99 } });
  for (const { withStore, without } of alone(winterSteps(rests, SET, 2))) {
    assertEquals(withStore, without);
  }
});

Deno.test("winters from the settled ground of the mean climate are those of a chain", () => {
  // heat within 0.3 %: the ground's memory of single winters is short
  const request = small();
  const [store] = alone(reducedStores([request]));
  const start = firstOfJuly({ ...store!, fan: true, heated: true });
  const shared = winterClimate(NORMALS, ALDERSETT);
  const climates = Array.from(
    { length: 4 },
    (_, winter) => plainWeather(makeWinter(shared, { seed: 4, winter })),
  );
  const first = withHeater(houseModel(request.houseInputs, climates[0]!), Infinity);
  const model = soilModel(request, first, store!.slice);
  const engine = freshEngine(model);
  const run = (climate: typeof climates[number], state: ReturnType<typeof stateOf>) => {
    const house = withHeater(houseModel(request.houseInputs, climate), Infinity);
    const setting = settledSetting({ request: { ...request, climate }, model, house, fan: true });
    return runYear({ ...setting, from: FIRST_OF_JULY }, state).heater;
  };
  engine.load(start.soil);
  const chain = stateOf(start, engine);
  const chained = climates.map((climate) => run(climate, chain));
  const restarted = climates.map((climate) => {
    engine.load(start.soil);
    return run(climate, stateOf(start, engine));
  });
  chained.slice(1).forEach((heat, place) => {
    assertAlmostEquals(restarted[place + 1]! / heat, 1, 0.003);
  });
});
