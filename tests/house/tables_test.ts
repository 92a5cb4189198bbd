import { assert, assertEquals, assertThrows } from "@std/assert";
import { InputError } from "../../lib/basics/mod.ts";
import { CROPS, findCrop, findGlazing, GLAZINGS } from "../../lib/house/mod.ts";

Deno.test("tables of glazings and crops name a source in every row and hold plausible numbers", () => {
  // Property: limits of the quantities
  for (const glazing of GLAZINGS) {
    assert(glazing.source.length > 10, glazing.id);
    assert(glazing.heatTransmittance > 0.5 && glazing.heatTransmittance < 8, glazing.id);
    assert(glazing.longWaveTransmittance >= 0 && glazing.longWaveTransmittance <= 0.8, glazing.id);
    assert(glazing.lightFactor > 0.5 && glazing.lightFactor <= 1, glazing.id);
  }
  for (const { id, nextBetter, heatTransmittance } of GLAZINGS) {
    if (nextBetter === null) continue;
    assert(findGlazing(nextBetter).heatTransmittance < heatTransmittance, `${id} to ${nextBetter}`);
  }
  for (const crop of CROPS) {
    assert(crop.source.length > 10, crop.id);
    assert(crop.killingLimit <= crop.damageLimit, crop.id);
    assert(crop.damageLimit <= crop.growthLimit, crop.id);
    assert(crop.wetFloor >= 0 && crop.wetFloor <= 1, crop.id);
  }
  assertEquals(new Set(GLAZINGS.map((row) => row.id)).size, GLAZINGS.length);
  assertEquals(new Set(CROPS.map((row) => row.id)).size, CROPS.length);
});

Deno.test("findGlazing() and findCrop() list the known ids when the id is unknown", () => {
  // Property: bad input
  assertThrows(() => findGlazing("ice"), InputError, "single-glass");
  assertThrows(() => findCrop("moss"), InputError, "lettuce");
});
