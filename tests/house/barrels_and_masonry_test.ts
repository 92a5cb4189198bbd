import { assert, assertAlmostEquals } from "@std/assert";
import {
  type HouseInputs,
  houseModel,
  initialHouseState,
  MASS_FREEZING_RANGE,
  massContent,
  stepHouse,
} from "../../lib/house/mod.ts";
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
  let state = { ...initialHouseState(model), airTemperature: 0, massTemperature: 0 };
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
