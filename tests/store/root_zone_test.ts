import { assert, assertAlmostEquals, assertEquals } from "@std/assert";
import { findCrop } from "../../lib/house/mod.ts";
import { storeChapter } from "../../lib/store/compute.ts";
import { existingHouse } from "../../lib/store/existing_house.ts";
import { bedTemperatures, ROOT_DEPTHS, rootZone } from "../../lib/store/root_zone.ts";
import { standInRequest } from "./stand_in.ts";

const inputs = { store: { slices: 2, spinUpYears: 1 } };
const request = standInRequest(inputs);
const result = storeChapter(request);

Deno.test("bedTemperatures() is exact where the soil is linear across and down, and stops at the walls", () => {
  // Closed form: 5 + 2 depth + 3 |x| between walls at 2 m has the mean 5 + 2 depth + 3; none beyond counts
  const x = Array.from({ length: 61 }, (_, k) => -3 + k / 10);
  const depths = [0.01, 0.1, 0.3];
  const cells = Float64Array.from(
    depths.flatMap((depth) =>
      x.map((at) => Math.abs(at) > 2.06 ? 1000 : 5 + 2 * depth + 3 * Math.abs(at))
    ),
  );
  const section = { x, depths, days: [0], temperatures: [cells] };
  for (const depth of [0.05, 0.1, 0.2]) {
    assertAlmostEquals(bedTemperatures(section, 2, depth)[0]!, 5 + 2 * depth + 3, 0.01);
  }
});

Deno.test("a store whose fan never starts leaves the beds as they are without it", () => {
  // Property: the same ground, settled from the other side; pictures of both on the same days
  const never = standInRequest({ store: { ...inputs.store, fanSeason: "never" } });
  const { days, depths } = rootZone(never, storeChapter(never).sections);
  assertEquals(days.length, 53);
  assertEquals(depths.map(({ depth }) => depth), [...ROOT_DEPTHS]);
  for (const { withStore, noStore, winterGain } of depths) {
    withStore.temperatures.forEach((value, k) =>
      assertAlmostEquals(value, noStore.temperatures[k]!, 0.05, `day ${days[k]}`)
    );
    assertAlmostEquals(winterGain, 0, 0.05);
  }
});

Deno.test("the beds swing less the deeper they lie, and are held against the crop's seeds", () => {
  // Property: damping with depth; weeks counted here
  const { crop, depths } = rootZone(request, result.sections);
  const { sprouting } = findCrop(request.houseInputs.crop);
  assertEquals(crop.sprouting, sprouting);
  const swing = depths.map(({ noStore: { temperatures } }) =>
    Math.max(...temperatures) - Math.min(...temperatures)
  );
  assert(swing[1]! < swing[0]!, `${swing}`);
  for (const { withStore } of depths) {
    const cold = withStore.temperatures.filter((value) => value < sprouting!.low).length;
    assertEquals(withStore.weeksTooCold, cold);
    assertEquals(withStore.coldest, Math.min(...withStore.temperatures));
  }
});

Deno.test("seeds come up in soil between the temperatures of the published table", () => {
  // Harrington & Minges 1954 [harrington-minges-1954], degF: lettuce 35, 40 to 80; spinach 35, 45 to 75; tomato 50, 70 to 95
  const table = { lettuce: [35, 40, 80], spinach: [35, 45, 75], tomato: [50, 70, 95] } as const;
  for (const [id, fahrenheit] of Object.entries(table)) {
    const { least, low, high } = findCrop(id).sprouting!;
    [least, low, high].forEach((value, k) =>
      assertAlmostEquals(value, (fahrenheit[k]! - 32) / 1.8, 0.06, id)
    );
  }
  assertEquals(findCrop("bare").sprouting, null);
});

Deno.test("under a house that has stood for years the first year needs no warming up of the ground", () => {
  // Property: nearer to the year that repeats than a start from open ground; without fan, nothing moves
  const standing = existingHouse(request, result.heatOut);
  const [open] = result.earlyYears;
  const off = (heat: number) => Math.abs(heat / result.heatOut - 1);
  assert(off(standing.heatOut) < off(open!.heatOut), `${standing.heatOut} ${open!.heatOut}`);
  assert(standing.heatIn < open!.heatIn, "warmer ground takes less");
  const still = existingHouse(
    standInRequest({ store: { ...inputs.store, fanSeason: "never" } }),
    0,
  );
  assertEquals([still.heatIn, still.heatOut, still.share], [0, 0, null]);
  assertEquals(standing.share, standing.heatOut / result.heatOut);
});
