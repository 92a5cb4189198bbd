// Property: the area that a design adds under the stairs of the unbeaten ones
import { assert, assertAlmostEquals, assertEquals } from "@std/assert";
import fc from "fast-check";
import { addedArea } from "../../../lib/worth/designs/front_area.ts";

Deno.test("the area is that of rectangles worked by hand", () => {
  // from 2 to 4 it gives 5 where 1 was had, from 4 to 10 it gives 5 where 3 was had
  const area = addedArea([{ cost: 1, gain: 1 }, { cost: 4, gain: 3 }], 10);
  assertEquals(area({ cost: 2, gain: 5 }), 2 * 4 + 6 * 2);
  assertEquals(area({ cost: 2, gain: 2 }), 2 * 1);
  assertEquals([area({ cost: 5, gain: 3 }), area({ cost: 1, gain: 1 })], [0, 0]);
  assertEquals(addedArea([], 10)({ cost: 4, gain: 2 }), 12);
});

Deno.test("designs added one upon the other add up to the same area in any order, and only beaten ones add none", () => {
  const design = fc.record({
    cost: fc.integer({ min: 0, max: 100 }),
    gain: fc.integer({ min: 1, max: 100 }),
  });
  const total = (all: readonly { cost: number; gain: number }[]) =>
    all.reduce((sum, one, k) => sum + addedArea(all.slice(0, k), 101)(one), 0);
  fc.assert(fc.property(fc.array(design, { minLength: 1, maxLength: 12 }), design, (all, more) => {
    assertAlmostEquals(total(all), total([...all].reverse()), 1e-9);
    const beaten = all.some(({ cost, gain }) => cost <= more.cost && gain >= more.gain);
    assertEquals(addedArea(all, 101)(more) === 0, beaten);
    assert(addedArea(all, 101)(more) >= 0);
  }));
});
