import { assert, assertAlmostEquals, assertEquals, assertStringIncludes } from "@std/assert";
import { floorColumn, houseChapter, houseModel, runHouseYear } from "../../../lib/house/mod.ts";
import { HOUSE, simpleSoil, simpleYear } from "../fixtures.ts";

const year = simpleYear({
  temperature: (hour) => -8 - 6 * Math.cos(2 * Math.PI * (hour % 24 - 4) / 24),
  sun: 0.2,
});
const soil = simpleSoil(2, 4);

Deno.test("a heater without limit holds the day's set point in light and the night's in the dark", () => {
  // Property: the air never falls below the set point of its hour, and comes down to it.
  const inputs = { ...HOUSE, heatSetPoint: 4, heatSetPointDay: 9, heaterPower: Infinity };
  const model = houseModel(inputs, year);
  const column = floorColumn({ geometry: model.geometry, edge: inputs, ...soil });
  const run = runHouseYear(model, column);
  let [dayLeast, nightLeast] = [Infinity, Infinity];
  run.year.airTemperature.forEach((air, hour) => {
    const light = year.globalHorizontal[hour]! > 0;
    assertEquals(model.setPoint[hour], light ? 9 : 4);
    if (light) dayLeast = Math.min(dayLeast, air);
    else nightLeast = Math.min(nightLeast, air);
  });
  assertAlmostEquals(dayLeast, 9, 1e-6);
  assertAlmostEquals(nightLeast, 4, 1e-6);
});

Deno.test("a warmer day's set point asks for more heat, a colder one for less", () => {
  // Property: monotone in the set point
  const demand = (day: number) =>
    houseChapter({ ...HOUSE, heatSetPoint: 4, heatSetPointDay: day }, year, soil).heatDemand;
  const plain = demand(4);
  assert(demand(8) > plain * 1.05, `${demand(8)} against ${plain}`);
  assert(demand(2) < plain, `${demand(2)} against ${plain}`);
});

Deno.test("houseChapter() runs the study's own heater and says where it is too small", () => {
  // Property: a heater between nothing and enough leaves the house between free running and the set
  // point; it cannot give more than its power all year.
  const chapter = (heaterPower: number) =>
    houseChapter({ ...HOUSE, heatSetPoint: 4, heatSetPointDay: 4, heaterPower }, year, soil);
  const none = chapter(0);
  assertEquals(none.ownHeater, null);
  const peak = none.heated.heater.reduce((most, value) => Math.max(most, value), 0);
  const small = chapter(peak / 3);
  const own = small.ownHeater!;
  assert(own.coldestHour > none.coldestHour + 0.5 && own.coldestHour < 3.9);
  assert(own.heat < own.power * 8760 / 1000 && own.heat < none.heatDemand);
  assert(own.hoursTooSmall > 0);
  const words = small.notices.map((notice) => notice.text).join("\n");
  assertStringIncludes(words, `is too small for ${own.hoursTooSmall} hours`);
  assertStringIncludes(words, "carbon-monoxide alarm");
  const ample = chapter(2 * peak).ownHeater!;
  assertEquals(ample.hoursTooSmall, 0);
  assertAlmostEquals(ample.coldestHour, 4, 1e-6);
  assertAlmostEquals(ample.heat, none.heatDemand, 1e-6 * none.heatDemand);
});

Deno.test("a heater gives nothing out of its season, and holds the house in it", () => {
  // Property: the days of the season, both ends with them; never is no heater, all year is none said
  const held = (heatSeason?: string) => {
    const model = houseModel({ ...HOUSE, heaterPower: Infinity, heatSeason }, year);
    const column = floorColumn({ geometry: model.geometry, edge: HOUSE, ...soil });
    return runHouseYear(model, column).year;
  };
  const run = held("1 Mar to 30 Nov");
  const days = (from: number, to: number) => run.heater.subarray(24 * from, 24 * to);
  assert(days(0, 59).every((power) => power === 0) && days(334, 365).every((power) => power === 0));
  assert(days(59, 60).some((power) => power > 0) && days(333, 334).some((power) => power > 0));
  const inSeason = run.airTemperature.subarray(24 * 59, 24 * 334);
  assert(inSeason.every((air) => air > HOUSE.heatSetPoint - 1e-6));
  assert(run.airTemperature.some((air) => air < HOUSE.heatSetPoint - 1));
  assert(held("never").heater.every((power) => power === 0));
  assertEquals(held("all year"), held());
});
