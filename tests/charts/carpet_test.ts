import { assertEquals } from "@std/assert";
import { carpetRuns, classLegend, classOf } from "../../lib/charts/mod.ts";
import { TEMPERATURE_CLASSES } from "../../lib/charts/palette.ts";
import { outdoors } from "./sample.ts";

Deno.test("carpetRuns() covers every hour of the year once, with the colour of its class", () => {
  // Property: nothing lost by joining hours
  const seen = new Uint8Array(8760);
  for (const run of carpetRuns(outdoors, TEMPERATURE_CLASSES)) {
    for (let hour = run.from; hour < run.to; hour++) {
      const at = run.day * 24 + hour;
      seen[at]!++;
      const expected = classOf(outdoors[at]!, TEMPERATURE_CLASSES.thresholds);
      assertEquals(run.colour, TEMPERATURE_CLASSES.colours[expected]);
    }
  }
  assertEquals(seen.every((count) => count === 1), true);
});

Deno.test("classOf() puts a value on a limit into the class above, as the legend says", () => {
  // Property: limits
  assertEquals(classOf(-30, [-30, 0]), 1);
  assertEquals(classOf(-30.001, [-30, 0]), 0);
  assertEquals(classOf(0, [-30, 0]), 2);
  const labels = classLegend({ thresholds: [-30, 0], colours: ["a", "b", "c"] }, "degC");
  assertEquals(labels.map((entry) => entry.label), ["< −30", "−30 to 0", "≥ 0 degC"]);
});
