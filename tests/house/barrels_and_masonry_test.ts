import { assert, assertAlmostEquals, assertEquals } from "@std/assert";
import {
  type HouseInputs,
  houseMeasures,
  houseModel,
  initialHouseState,
  MASS_FREEZING_RANGE,
  massContent,
  stepHouse,
} from "../../lib/house/mod.ts";
import { completeHouse } from "../../lib/house/defaults.ts";
import { drumSurface } from "../../lib/house/barrels_and_masonry.ts";
import { HOUSE, NO_FLOOR, simpleYear } from "./fixtures.ts";

const still = { ...HOUSE, crop: "bare", leafArea: 0, waterVolume: 0, curtain: null };

Deno.test("masonry evens out the day and water more so", () => {
  // Property: order of capacities; a day's swing without heater shrinks with mass.
  const swing = (change: Partial<HouseInputs>) => {
    const climate = simpleYear({ temperature: () => 5, sun: 0.4 });
    const model = houseModel({ ...still, ...change }, climate);
    let [state, high, low] = [initialHouseState(model), -99, 99];
    for (let hour = 0; hour < 240; hour++) {
      state = stepHouse(model, state, hour, 3600, NO_FLOOR).state;
      if (hour >= 216) high = Math.max(high, state.airTemperature);
      if (hour >= 216) low = Math.min(low, state.airTemperature);
    }
    return high - low;
  };
  const bare = swing({});
  const masonry = swing({ masonryVolume: 15, masonrySurface: 100 });
  const water = swing({ waterVolume: 15, waterSurface: 100 });
  assert(masonry < 0.95 * bare && water < masonry, `${bare} ${masonry} ${water}`);
});

Deno.test("barrels that freeze hold the house at 0 degC until their latent heat is gone", () => {
  // Property: 1 m³ of water sets 334 MJ free between 0 and -1 degC; content and temperature agree.
  const climate = simpleYear({ temperature: () => -20 });
  const model = houseModel({ ...still, waterVolume: 5, waterSurface: 50 }, climate);
  let state = {
    ...initialHouseState(model),
    airTemperature: 0,
    massTemperature: 0,
    masonryTemperature: 0,
  };
  let [given, hours] = [0, 0];
  while (state.massTemperature > -MASS_FREEZING_RANGE && hours < 2000) {
    const step = stepHouse(model, state, hours++, 3600, NO_FLOOR);
    given += step.flows.mass * 3600;
    state = step.state;
  }
  const content = massContent(model.massStore, 0) -
    massContent(model.massStore, state.massTemperature);
  assertAlmostEquals(given, content, 1e-9 * content);
  assert(given > 5 * 334e6 && given < 1.1 * 5 * 334e6, `${given} J`);
  assert(hours > 24, `${hours} h`);
  // 4.186 MJ/(m³ K) of water
  const warm = massContent(model.massStore, 10) - massContent(model.massStore, 0);
  assertAlmostEquals(warm / 5, 41.86e6, 0.1e6);
});

Deno.test("barrels and masonry keep temperatures of their own, and both keep the books", () => {
  // Property: each mass gives what its own content lost; the sun of both is shared by surface; a
  // thin wall follows the air, a full barrel does not
  const climate = simpleYear({ temperature: () => 5, sun: 0.4 });
  const both = { waterVolume: 4, waterSurface: 30, masonryVolume: 2, masonrySurface: 40 };
  const model = houseModel({ ...still, ...both }, climate);
  assertAlmostEquals(model.masonrySunShare, 40 / 70, 1e-12);
  let state = initialHouseState(model);
  let apart = 0;
  for (let hour = 0; hour < 240; hour++) {
    const { state: end, flows } = stepHouse(model, state, hour, 3600, NO_FLOOR);
    const barrels = massContent(model.massStore, state.massTemperature) -
      massContent(model.massStore, end.massTemperature);
    const masonry = model.masonryStore * (state.masonryTemperature - end.masonryTemperature);
    assertAlmostEquals(flows.mass * 3600, barrels + masonry, 1e-6 * model.massStore.thawed);
    apart = Math.max(apart, Math.abs(end.massTemperature - end.masonryTemperature));
    state = end;
  }
  assert(apart > 2, `${apart} K`);
});

Deno.test("masonry beside a barrel that freezes falls below 0 degC at once", () => {
  // Property: the latent heat of the water belongs to the water alone
  const climate = simpleYear({ temperature: () => -20 });
  const both = { waterVolume: 5, waterSurface: 50, masonryVolume: 2, masonrySurface: 40 };
  const model = houseModel({ ...still, ...both }, climate);
  let state = {
    ...initialHouseState(model),
    airTemperature: 1,
    massTemperature: 1,
    masonryTemperature: 1,
  };
  for (let hour = 0; hour < 48; hour++) state = stepHouse(model, state, hour, 3600, NO_FLOOR).state;
  assert(state.massTemperature > -MASS_FREEZING_RANGE && state.masonryTemperature < -1.5);
});

Deno.test("drums in a row along a wall show half of their surface, and only the uppermost their tops", () => {
  // Property: geometry of a cylinder that touches its neighbours, the wall and the floor
  const round = Math.PI * 0.57 * 0.85 + 2 * Math.PI * 0.57 ** 2 / 4;
  const top = Math.PI * 0.57 ** 2 / 4;
  assertAlmostEquals(drumSurface(1, 0.3), round / 2, 1e-12);
  assertAlmostEquals(drumSurface(42, 24), 42 * round / 2, 1e-9);
  assertAlmostEquals(drumSurface(70, 24), 70 * round / 2 - 28 * top, 1e-9);
  assertEquals(drumSurface(0, 24), 0);
});

Deno.test("barrels whose surface is left open stand along the wall", () => {
  // Property: the measure and the default count one geometry
  const [barrels] = houseMeasures({ ...HOUSE, waterVolume: 0, waterSurface: 0 })
    .filter(({ id }) => id === "barrel");
  const { waterVolume, waterSurface } = barrels!.inputs;
  const given = { ...HOUSE, curtain: null, waterVolume, waterSurface: undefined };
  const complete = completeHouse(
    given,
    { soil: { snowDepth: 0 } },
    (_, value, rule) => value ?? rule(),
  );
  assertAlmostEquals(complete.waterSurface, waterSurface, 0.06);
});
