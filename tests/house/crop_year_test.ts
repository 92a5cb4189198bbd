import { assert, assertEquals } from "@std/assert";
import { CROPS, cropYear, DAMP, dampHours } from "../../lib/house/mod.ts";

const wave = Float64Array.from(
  { length: 8760 },
  (_, hour) => 4 - 18 * Math.cos(2 * Math.PI * hour / 8760),
);

Deno.test("a year is below a crop's killing limit no longer than below its other limits", () => {
  // Property: the limits of every crop of the table stand in order, and so do the hours below them
  for (const crop of CROPS) {
    const { killing, damage, growth } = cropYear(wave, crop);
    assert(killing.hours <= damage.hours && damage.hours <= growth.hours, crop.id);
    assert(killing.degreeHours <= damage.degreeHours, crop.id);
    assert(killing.longestSpell <= killing.hours, crop.id);
    assertEquals(killing.first === null, killing.hours === 0, crop.id);
  }
});

Deno.test("dampHours() counts humid and dripping hours and all water, as by hand", () => {
  // Property: by hand, 100 m² of floor: 1 kg/h and more drips
  const relativeHumidity = Float64Array.of(DAMP, DAMP + 0.01, 1, 0.5);
  const condensed = Float64Array.of(0, 0.9 / 3600, 1.1 / 3600, 0);
  const { humid, dripping, condensed: water } = dampHours({ relativeHumidity, condensed }, 100);
  assertEquals([humid, dripping], [2, 1]);
  assert(Math.abs(water - 2) < 1e-12, `${water}`);
});
