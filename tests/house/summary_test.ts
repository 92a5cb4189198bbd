import { assert, assertAlmostEquals, assertEquals } from "@std/assert";
import { HOUR, hoursBelow } from "../../lib/basics/mod.ts";
import {
  coldestWeek,
  dampHours,
  freezingRange,
  heatByMonth,
  houseChapter,
  humidityByMonth,
  limitsOutdoors,
  summariseHouse,
} from "../../lib/house/mod.ts";
import { HOUSE, simpleSoil, simpleYear } from "./fixtures.ts";

const climate = simpleYear({
  temperature: (hour) => 2 - 17 * Math.cos(2 * Math.PI * (hour / 8760 - 0.05)),
  sun: 0.4,
});
const inputs = { ...HOUSE, northEarthHeight: 1 };
const result = summariseHouse(inputs, climate, houseChapter(inputs, climate, simpleSoil(4, 12)));
const { summary } = result;

Deno.test("lossRows(): the parts add up to the loss coefficient, a wall behind earth too", () => {
  // Property: the table accounts for all of the loss; shares of its parts add up to one
  const sum = summary.losses.reduce((total, row) => total + row.conductance, 0);
  assertAlmostEquals(sum, result.lossCoefficient, 1e-9 * result.lossCoefficient);
  assertEquals(summary.losses.slice(-2).map((row) => row.kind), ["air", "ground"]);
  const shares = summary.lossShares.reduce((total, part) => total + part.share, 0);
  assertAlmostEquals(shares, 1, 1e-12);
});

Deno.test("leakageRange() moves the loss by half and by all of the leakage", () => {
  // Property: definition
  const leak = result.lossParts.find(({ id }) => id === "leakage")!.conductance;
  const [half, twice] = summary.leakageRange;
  assertAlmostEquals(result.lossCoefficient - half, leak / 2, 1e-9 * leak);
  assertAlmostEquals(twice - result.lossCoefficient, leak, 1e-9 * leak);
});

Deno.test("skinAreas() leaves no surface of the skin out", () => {
  // Property: conservation
  const { glazed, opaque } = summary.areas;
  const all = result.geometry.parts.reduce((total, part) => total + part.area, 0);
  assertAlmostEquals(glazed + opaque, all, 1e-9 * all);
  assert(glazed > 0 && opaque > 0);
});

Deno.test("freezingRange() brackets the hours below freezing", () => {
  // Property: one kelvin warmer means fewer hours, one colder more
  const air = result.freeRunning.airTemperature;
  const { warmer, colder } = freezingRange(air);
  const own = hoursBelow(air, 0);
  assert(warmer < own && own < colder, `${warmer} ${own} ${colder}`);
});

Deno.test("limitsOutdoors() rises, names no limit twice and counts degree-hours by hand", () => {
  // Property: a year at -5 degC lies 5 K below freezing in each of its hours
  const cold = new Float64Array(8760).fill(-5);
  const crop = { name: "spinach", killingLimit: -9, damageLimit: -4, growthLimit: 5 };
  const rows = limitsOutdoors(cold, crop, 5);
  assertEquals(rows.map((row) => row.limit), [-9, -4, 0, 5]);
  assertEquals(rows.map((row) => row.hours), [0, 8760, 8760, 8760]);
  assertEquals(rows[2]!.degreeHours, 5 * 8760);
});

Deno.test("heatByMonth() adds up to the flows of the year", () => {
  // Property: conservation and sign: the floor gives in winter
  const rows = heatByMonth(result.heated);
  for (const key of ["solar", "heater", "floor", "glazing", "leakage"] as const) {
    const year = result.heated[key].reduce((sum, watt) => sum + watt, 0) / 1000;
    const months = rows.reduce((sum, row) => sum + row[key], 0);
    assertAlmostEquals(months, year, 1e-9 * Math.abs(year) + 1e-9);
  }
  assert(rows[0]!.floor > 0);
});

Deno.test("humidityByMonth() and the days of the summary keep the year's water", () => {
  // Property: conservation
  const rows = humidityByMonth(result.freeRunning);
  const kg = (series: Float64Array) => series.reduce((sum, flow) => sum + flow, 0) * HOUR;
  const condensed = kg(result.freeRunning.condensed);
  assert(condensed > 0);
  const close = (found: number) => assertAlmostEquals(found, condensed, 1e-9 * condensed);
  close(rows.reduce((sum, row) => sum + row.condensed, 0));
  close(summary.condensedDays.reduce((sum, day) => sum + day, 0));
  close(summary.condensed);
  const evaporated = rows.reduce((sum, row) => sum + row.evaporated, 0);
  assertAlmostEquals(evaporated, kg(result.freeRunning.evaporated), 1e-9 * evaporated);
  const damp = dampHours(result.freeRunning, result.geometry.floorArea).humid;
  assertEquals(summary.dampHours, damp);
});

Deno.test("months and years count damp hours by one rule", () => {
  // Property: an hour at the limit itself is counted by both or by neither
  const flat = (value: number) => new Float64Array(8760).fill(value);
  for (const humidity of [0.89, 0.9, 0.91]) {
    const year = { relativeHumidity: flat(humidity), evaporated: flat(0), condensed: flat(0) };
    const months = humidityByMonth(year).reduce((sum, month) => sum + month.dampHours, 0);
    assertEquals(months, dampHours(year, 100).humid);
  }
});

Deno.test("coldestWeek() holds the coldest hour and sums each day", () => {
  // Property: hand-made series: 12 h of 100 W/m² and 2 kW make 1.2 kWh/m² and 24 kWh a day
  const flat = (value: (hour: number) => number) =>
    Float64Array.from({ length: 8760 }, (_, hour) => value(hour));
  const inside = flat((hour) => hour === 2000 ? -8 : hour % 24);
  const { start, days } = coldestWeek({
    outdoors: flat(() => -3),
    radiation: flat((hour) => hour % 24 < 12 ? 100 : 0),
    inside,
    heater: flat((hour) => hour % 24 < 12 ? 2000 : 0),
  });
  assert(start <= 2000 && 2000 < start + 168);
  assertEquals(Math.min(...days.map((day) => day.insideLowest)), -8);
  for (const day of days) {
    assertEquals([day.outdoorsLowest, day.insideHighest], [-3, 23]);
    assertAlmostEquals(day.radiation, 1.2, 1e-9);
    assertAlmostEquals(day.heatDemand, 24, 1e-9);
  }
});

Deno.test("the hours below each limit are those of the chapter", () => {
  // Property: one number for one thing
  const freezing = summary.hoursBelow.find((row) => row.limit === 0)!;
  assertEquals(freezing.inside, result.crop.freezing.hours);
  const lowest = Math.min(...summary.temperatureMonths.map((month) => month.insideLowest));
  assertEquals(lowest, result.coldestHour);
  assertEquals(summary.peakDemand, Math.max(...result.heated.heater));
});
