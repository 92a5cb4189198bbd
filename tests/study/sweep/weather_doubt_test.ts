import { assert, assertAlmostEquals, assertEquals, assertThrows } from "@std/assert";
import { InputError } from "../../../lib/basics/mod.ts";
import {
  drawnWinters,
  readWinterValues,
  winterValues,
  winterValuesText,
  withWeather,
} from "../../../lib/study/sweep/mod.ts";
import { latinHypercube, sampledEffects } from "../../../lib/worth/mod.ts";
import { madeHouseWinter } from "../../support/made_winter.ts";

const WINTERS = Array.from({ length: 400 }, (_, winter) => ({
  winter,
  coldestOutdoors: -30,
  withStore: madeHouseWinter(winter + 1, 0, 0),
  without: madeHouseWinter(winter + 1, 4, 0),
}));

/** A figure that is 10·x₁ + 5·x₂ of two inputs, 0 to 1. */
function doubted(points: readonly (readonly number[])[], unchanged: number) {
  const values = points.map(([one, other], k) => ({ row: k + 1, value: 10 * one! + 5 * other! }));
  const effects = sampledEffects(points, values.map(({ value }) => value));
  const figure = { key: "store.coldestHour", unit: "degC", label: "coldest hour", unchanged };
  return { values, doubt: { figure, count: points.length, ...effects, weather: null } };
}

Deno.test("the same seed and sample give the same winter, and all winters come equally often", () => {
  // Property: keyed draws of a Latin hypercube
  const drawn = drawnWinters(400, 100, 3);
  assertEquals(drawn, drawnWinters(400, 100, 3));
  for (let winter = 0; winter < 100; winter++) {
    assertEquals(drawn.filter((one) => one === winter).length, 4);
  }
  assert(drawnWinters(400, 100, 4).some((one, k) => one !== drawn[k]));
});

Deno.test("shares of a sum of uniform values and winters are those of its variances, 100/12, 25/12 and the winters'", () => {
  // Source: variance of a sum of independent parts; of a uniform value of width w it is w²/12
  const points = latinHypercube(4096, 2, 9);
  const { values, doubt } = doubted(points, 7.5);
  const spread = [-12, -4, 4, 12];
  const winters = spread.map((one) => 7.5 + one);
  const found = withWeather(doubt, values, { winters, drawn: drawnWinters(4096, 4, 9) });
  const weather = (144 + 16 + 16 + 144) / 3;
  const all = (100 + 25) / 12 + weather;
  assertAlmostEquals(found.weather!, weather / all, 0.002);
  assertAlmostEquals(found.effects![0]!.first, 100 / 12 / all, 0.002);
  assertAlmostEquals(found.effects![1]!.total, 25 / 12 / all, 0.002);
  // the band of the sum reaches beyond that of either part, and its middle stays
  assert(found.band[0] < doubt.band[0] - 8 && found.band[1] > doubt.band[1] + 8);
  assertAlmostEquals((found.band[0] + found.band[1]) / 2, 7.5, 0.5);
});

Deno.test("a year that always is the study's own changes no band and no share", () => {
  // Property: a winter without a spread
  const { values, doubt } = doubted(latinHypercube(64, 2, 1), 6);
  const winters = [6, 6, 6];
  const found = withWeather(doubt, values, { winters, drawn: drawnWinters(64, 3, 1) });
  assertEquals([found.effects, found.weather], [doubt.effects, 0]);
  found.band.forEach((end, k) => assertAlmostEquals(end, doubt.band[k]!, 1e-12));
});

Deno.test("a table of winters is read as it was written, and holds heat saved winter by winter", () => {
  // Property: written and read
  const found = winterValues(WINTERS);
  assertEquals(readWinterValues(winterValuesText(found), "weather.csv"), found);
  const torn = winterValuesText(found).trimEnd().replace(/,[^,]*$/, ",none");
  const fault = assertThrows(() => readWinterValues(torn, "weather.csv"), InputError);
  assertEquals(fault.location?.line, 1 + found.get("store.savedHeat")!.length);
  const [{ withStore, without }] = WINTERS as [typeof WINTERS[number]];
  assertEquals(found.get("store.savedHeat")![0], without.backupHeat - withStore.backupHeat);
});
