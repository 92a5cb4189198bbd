import { assertEquals, assertThrows } from "@std/assert";
import { InputError } from "../../../lib/basics/mod.ts";
import { compareHours, COUNTED_LIMITS, readHours, readResults } from "../../../lib/study/mod.ts";

const HEAD = "hour,house temperature without store (degC),house temperature with store (degC)";
const year = (line: (hour: number) => string) =>
  [HEAD, ...Array.from({ length: 8760 }, (_, hour) => line(hour))].join("\n");

Deno.test("readHours() reads the house's air; compareHours() counts hours below each limit", () => {
  // Property: counts of a made-up year, 100 hours at −1 °C in one run and none in the other
  const cold = readHours(year((hour) => `${hour},-3,${hour < 100 ? -1 : 20}`), "hourly.csv");
  const mild = readHours(year((hour) => `${hour},-3,20`), "hourly.csv");
  const { firstBelow, secondBelow } = compareHours(cold, mild);
  assertEquals(firstBelow, COUNTED_LIMITS.map((limit) => limit > -1 ? 100 : 0));
  assertEquals(secondBelow, COUNTED_LIMITS.map(() => 0));
});

Deno.test("readHours() and readResults() name file, line and what was expected", () => {
  // Property: bad input
  const fails = (text: string, ...words: string[]) => {
    for (const word of words) assertThrows(() => readHours(text, "a/hourly.csv"), InputError, word);
  };
  fails("hour\n1", "a/hourly.csv:1", "with store (degC)");
  fails(year((hour) => hour === 7 ? "7,1,warm" : "0,1,1"), "a/hourly.csv:9", '"warm"');
  fails(`${HEAD}\n0,1,1`, "8760 rows were expected, 1 found");
  const broken = (text: string, word: string) =>
    assertThrows(() => readResults(text, "a/results.json"), InputError, word);
  broken("{", "not JSON");
  broken("[]", "a/results.json");
  broken('{"study": {"name": 1}}', "study.name");
});
