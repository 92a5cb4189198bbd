import { assert, assertEquals } from "@std/assert";
import { carpetRuns, classLegend, classOf } from "../../../lib/show/kit/carpet.ts";
import { GROUND_CLASSES, TEMPERATURE_CLASSES } from "../../../lib/show/kit/palette.ts";
import { groundClasses } from "../../../lib/show/kit/field_classes.ts";
import { luminance } from "./colour_vision.ts";
import { outdoors } from "../sample.ts";

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

Deno.test("groundClasses() keeps freezing in sight where it freezes, else spans the values", () => {
  // Property: limits inside the values, one colour more than limits, darker with warmth
  assertEquals(groundClasses([[-2, 12]]), GROUND_CLASSES);
  const warm = groundClasses([[17.2, 20], [33.9]]);
  assertEquals(warm.colours.length, warm.thresholds.length + 1);
  assert(warm.thresholds.length >= 2);
  for (const limit of warm.thresholds) assert(limit > 17.2 && limit < 33.9);
  for (let i = 1; i < warm.colours.length; i++) {
    assert(luminance(warm.colours[i]!) < luminance(warm.colours[i - 1]!));
  }
});
