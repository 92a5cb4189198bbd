import { assert } from "@std/assert";
import { houseChapter, summariseHouse } from "../../../lib/house/mod.ts";
import { frostTable, skinTable } from "../../../lib/show/house/answer.ts";
import { HOUSE, simpleSoil, simpleYear } from "../../house/fixtures.ts";

const climate = simpleYear({
  temperature: (hour) => 2 - 17 * Math.cos(2 * Math.PI * (hour / 8760 - 0.05)),
  sun: 0.4,
});
const inputs = { ...HOUSE, northEarthHeight: 1 };
const result = summariseHouse(inputs, climate, houseChapter(inputs, climate, simpleSoil(4, 12)));

Deno.test("skinTable() ends with leakage, floor edge and the loss coefficient", () => {
  // Property: the parts and what they add up to
  const shown = skinTable(result)["text/plain"];
  for (const word of ["leakage", "floor edge", "total", "U·A at night, W/K"]) {
    assert(shown.includes(word), word);
  }
  assert(shown.includes(result.lossCoefficient.toFixed(1)), shown);
});

Deno.test("frostTable() tells dates in a cold year and never in a warm one", () => {
  // Property: null is told in words; a stricter limit is crossed later in autumn
  const cold = frostTable(result, inputs)["text/plain"];
  assert(/^freezing .*house, screening year/m.test(cold) && cold.includes("plants die"), cold);
  assert(result.crop.freezing.first !== null && !/^freezing .*never/m.test(cold), cold);
  const warm = houseChapter(
    HOUSE,
    simpleYear({ temperature: () => 18 }),
    simpleSoil(18),
  );
  const lines = frostTable(warm, HOUSE)["text/plain"].split("\n").slice(1);
  for (const line of lines) assert(/ 0 .*never.*never/.test(line), line);
  assert(lines.length >= 8, `${lines.length}`);
});
