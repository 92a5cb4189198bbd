import { assert, assertAlmostEquals, assertEquals } from "@std/assert";
import { findCrop } from "../../lib/house/mod.ts";
import { storeChapter } from "../../lib/store/compute.ts";
import { type CutCourse, powerCut } from "../../lib/store/power_cut.ts";
import { formulaClimate, standInRequest } from "./stand_in.ts";

const request = standInRequest({ store: { slices: 2, spinUpYears: 1 } });
const result = storeChapter(request);
const cut = powerCut(request, result.cutStates);

/** The one course that fits. */
function course(want: Partial<CutCourse>, courses = cut.courses): CutCourse {
  const found = courses.filter((row) =>
    Object.entries(want).every(([key, value]) => row[key as keyof CutCourse] === value)
  );
  assertEquals(found.length, 1, JSON.stringify(want));
  return found[0]!;
}

const STARTS = ["coldest hour", "coldest three days"] as const;

Deno.test("powerCut() starts at the coldest hour outdoors and at the coldest three days", () => {
  // Property: worked out here from the weather
  const { dryBulb } = request.climate;
  const coldest = dryBulb.indexOf(Math.min(...dryBulb));
  assertEquals(course({ start: "coldest hour", heated: true, way: "store" }).hour, coldest);
  const sums = Array.from(
    { length: 8760 - 71 },
    (_, hour) => dryBulb.subarray(hour, hour + 72).reduce((sum, value) => sum + value, 0),
  );
  const spell = course({ start: "coldest three days", heated: true, way: "store" }).hour;
  assertAlmostEquals(sums[spell]!, Math.min(...sums), 1e-6);
  assertEquals(cut.courses.length, 12);
});

Deno.test("powerCut() takes up the year's own house at the cut", () => {
  // Property: the hour before the cut, in the series of the year; a heated house at its set point
  for (const start of STARTS) {
    const free = course({ start, heated: false, way: "store" });
    const before = result.year.house.airTemperature[free.hour - 1]!;
    assertAlmostEquals(free.air[0]!, before, 1, "end of the hour and its mean");
    const held = course({ start, heated: true, way: "store" });
    assert(held.air[0]! >= request.houseInputs.heatSetPoint - 1e-9);
    assertAlmostEquals(held.air[0]!, result.backupYear.airTemperature[held.hour - 1]!, 1);
    assertEquals(held.air.length, cut.hours + 1);
  }
});

Deno.test("powerCut() of a house with neither heater nor fan is the year without a store going on", () => {
  // Property: nothing stops there but the vents, shut in the coldest nights; short steps against
  // whole hours, end of the hour against its mean
  const { hour, air } = course({ start: "coldest hour", heated: false, way: "no store" });
  for (let after = 1; after <= 24; after++) {
    const mean = (air[after - 1]! + air[after]!) / 2;
    const year = result.noFan.airTemperature[hour + after - 1]!;
    assertAlmostEquals(mean, year, 1.5, `${after} h`);
  }
});

Deno.test("powerCut() without a store hangs on nothing that the tubes carry, however unevenly", () => {
  // Property: the house without a store is the same whatever each tube would get; a field that is
  // uneven across makes a slice of its own for the store
  const { shares } = request.headers;
  const tilted = shares.map((_, tube) => 0.7 + 0.6 * tube / (shares.length - 1));
  const uneven = { ...request, headers: { shares: tilted } };
  const { courses } = powerCut(uneven, storeChapter(uneven).cutStates);
  for (const start of STARTS) {
    for (const heated of [true, false]) {
      const want = { start, heated, way: "no store" } as const;
      const [even, here] = [course(want), course(want, courses)];
      here.air.forEach((value, hour) => assertAlmostEquals(value, even.air[hour]!, 1e-9));
      assertAlmostEquals(here.lowest, even.lowest, 1e-9);
    }
    const held = course({ start, heated: true, way: "store" }, courses);
    assert(Math.max(...held.air) < 40, "no hotter than weather and ground can make it");
  }
});

Deno.test("powerCut() gives hours that the temperatures bear out, shorter without a store", () => {
  // Property: the crossing lies between two hours on either side of the limit; warm ground helps
  const { killingLimit } = findCrop(request.houseInputs.crop);
  for (const row of cut.courses) {
    for (const [hours, limit] of [[row.toFreezing, 0], [row.toCropLimit, killingLimit]] as const) {
      if (hours === null) assert(row.air.every((value) => value >= limit - 0.3));
      else if (hours === 0) assert(row.air[0]! < limit);
      else {
        assert(row.air[Math.floor(hours)]! >= limit - 0.3, `${hours} h to ${limit}`);
        assert(row.air.subarray(0, Math.floor(hours)).every((value) => value >= limit - 0.3));
      }
    }
    assertAlmostEquals(row.lowest, Math.min(...row.air), 0.3);
  }
  for (const start of STARTS) {
    const [fan, store, none] = (["fan kept running", "store", "no store"] as const)
      .map((way) => course({ start, heated: true, way }));
    assert(store!.toFreezing! > 0 && store!.toFreezing! >= none!.toFreezing!);
    assert(fan!.lowest >= store!.lowest && store!.lowest > none!.lowest);
  }
});

Deno.test("powerCut() has no hours to give where it never freezes", () => {
  // Property: a warm place
  const warm = standInRequest({
    climate: formulaClimate({ mean: 18, swing: 4 }),
    store: { slices: 1, spinUpYears: 0 },
  });
  const { courses } = powerCut(warm, storeChapter(warm).cutStates);
  assert(
    courses.every(({ toFreezing, toCropLimit }) => toFreezing === null && toCropLimit === null),
  );
});
