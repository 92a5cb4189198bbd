import { assert, assertRejects } from "@std/assert";
import { InputError } from "../../lib/basics/mod.ts";
import { houseChapter, summariseHouse } from "../../lib/house/mod.ts";
import { frostTable, measuresTable, skinTable } from "../../lib/show/house/answer.ts";
import { greenhouseLogItems } from "../../lib/show/measured/greenhouse_log.ts";
import { RECORDED_SCORES } from "../../lib/measured/mod.ts";
import { greenhouseLog, LOG_VARIABLE } from "../../lib/study/mod.ts";
import * as sample from "./sample.ts";
import { HOUSE, simpleSoil, simpleYear } from "../house/fixtures.ts";

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
  assert(/^freezing .*in the house/m.test(cold) && cold.includes("plants die"), cold);
  assert(result.firstFreezeNoStore !== null && !/^freezing .*never/m.test(cold), cold);
  const warm = houseChapter(
    HOUSE,
    simpleYear({ temperature: () => 18 }),
    simpleSoil(18),
  );
  const lines = frostTable(warm, HOUSE)["text/plain"].split("\n").slice(1);
  for (const line of lines) assert(/ 0 .*never.*never/.test(line), line);
  assert(lines.length >= 8, `${lines.length}`);
});

Deno.test("measuresTable() keeps the order of the ranking, the house as it is first", () => {
  // Property: order
  const shown = measuresTable(sample.ranking)["text/plain"];
  const places = sample.ranking.map(({ name }) => shown.indexOf(name));
  assert(places.every((place, i) => place > 0 && (i === 0 || place > places[i - 1]!)), shown);
});

Deno.test("greenhouseLogItems() without a log says so and where to get it", () => {
  // Property: recorded figures are never passed off as worked out
  const [scores, words] = greenhouseLogItems(null).map((item) => item["text/plain"]);
  assert(scores!.includes("Recorded scores, not computed in this run"));
  for (const { predicted } of RECORDED_SCORES) assert(scores!.includes(predicted), predicted);
  assert(words!.includes(LOG_VARIABLE) && words!.includes("weather.csv"));
});

Deno.test("greenhouseLog() names the file it cannot read", async () => {
  // Property: bad input
  const before = Deno.env.get(LOG_VARIABLE);
  const folder = await Deno.makeTempDir();
  try {
    Deno.env.set(LOG_VARIABLE, folder);
    await assertRejects(() => greenhouseLog(), InputError, "weather.csv");
  } finally {
    if (before === undefined) Deno.env.delete(LOG_VARIABLE);
    else Deno.env.set(LOG_VARIABLE, before);
    await Deno.remove(folder);
  }
});
