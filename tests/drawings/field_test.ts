import { assert, assertAlmostEquals, assertEquals } from "@std/assert";
import { drawSheets, headerHoles } from "winterground/drawings/mod.ts";
import { fieldGeometry } from "winterground/headers/mod.ts";
import { textBoxes } from "./boxes.ts";
import { exampleInputs } from "./example.ts";

Deno.test("fieldGeometry() spreads headers that are wider than the step between layers", () => {
  // Property: hand arithmetic: 18-inch headers, layers 16 inches apart, 15 mm between the pipes
  const wide = exampleInputs({ header: 0.4572 });
  const spread = 0.4572 + 0.015 - 0.4;
  const { headers } = fieldGeometry(wide);
  assertAlmostEquals(headers[1]!.depth - headers[0]!.depth, 0.4722, 1e-9);
  assertAlmostEquals(headers[0]!.rows[0]!.offset, spread / 2, 1e-9);
  assertAlmostEquals(headers[1]!.rows[0]!.offset, -spread / 2, 1e-9);
  assertEquals(headers.flatMap(({ rows }) => rows).map(({ bend }) => bend), [0, 0]);
  const [hole] = headerHoles(wide).holes;
  assertAlmostEquals(Math.sin(hole!.angle * Math.PI / 180), -spread / 0.4572, 1e-9);
});

Deno.test("the fall puts the low end of the pit half of it deeper than the middle", () => {
  // Property: hand arithmetic: 20 m at 1 % and at 3 %
  for (const slope of [0, 0.01, 0.03]) {
    const inputs = exampleInputs({ slope });
    const { pit, fall } = fieldGeometry(inputs);
    assertAlmostEquals(fall, 20 * slope, 1e-9);
    assertAlmostEquals(pit.lowEnd - pit.depth, 10 * slope, 1e-9);
  }
  const steep = drawSheets(exampleInputs({ slope: 0.05 }), "A4")["long-section-A4.svg"]!;
  assert(textBoxes(steep).some(({ words }) => words.startsWith("Cover at the supply end")));
});

Deno.test("the pit reaches below the lowest tubes where these are wider down than the headers", () => {
  // Property: hand arithmetic: tubes of 118 mm at 1 m on headers of 80 mm: 1 + 0.059 + 0.1 m
  const { pit } = fieldGeometry(exampleInputs({ header: 0.08 }));
  assertAlmostEquals(pit.depth, 1.159, 1e-9);
});
