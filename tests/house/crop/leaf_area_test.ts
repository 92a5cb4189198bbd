import { assert, assertAlmostEquals, assertEquals } from "@std/assert";
import { CROPS } from "../../../lib/house/mod.ts";
import { leafAreaByHour, leafAreaOfCrop } from "../../../lib/house/crop/leaf_area.ts";
import { MONTH_FIRST_HOURS } from "../../../lib/basics/mod.ts";

Deno.test("leafAreaByHour() keeps a constant, and meets twelve values at the middle of their months", () => {
  // Property: definition; a constant must not move by rounding, so that its years stay the same
  assert(leafAreaByHour(1.7).every((value) => value === 1.7));
  const months = [1, 2, 0, 4, 3, 2, 5, 6, 0.5, 0, 1, 2];
  const hours = leafAreaByHour(months);
  for (const [month, value] of months.entries()) {
    const middle = (MONTH_FIRST_HOURS[month]! + MONTH_FIRST_HOURS[month + 1]!) / 2;
    assertAlmostEquals(hours[Math.floor(middle)]!, value, 0.01, `month ${month}`);
  }
});

Deno.test("leafAreaByHour() runs on without a jump, through the year's end too", () => {
  // Property: continuity; no hour differs from the next by more than the steepest month allows
  const hours = leafAreaByHour([0, 5, 0, 5, 0, 5, 0, 5, 0, 5, 0, 5]);
  for (let hour = 0; hour < 8760; hour++) {
    assert(Math.abs(hours[hour]! - hours[(hour + 1) % 8760]!) < 0.008, `hour ${hour}`);
    assert(hours[hour]! >= 0 && hours[hour]! <= 5, `hour ${hour}`);
  }
});

Deno.test("every crop has a calendar of leaf area, and empty beds have none", () => {
  // Property: the two tables of crops name the same ids; leaf area within the limits of the key
  for (const crop of CROPS) {
    const months = leafAreaOfCrop(crop.id);
    assertEquals(months.length, 12, crop.id);
    for (const value of months) assert(value >= 0 && value <= 8, crop.id);
    assertEquals(months.every((value) => value === 0), crop.id === "bare", crop.id);
  }
});
