import { assert, assertAlmostEquals, assertEquals } from "@std/assert";
import { headerHoles } from "winterground/drawings/mod.ts";
import { exampleInputs } from "./example.ts";

Deno.test("headerHoles() leaves the ligament efficiency (p − d)/p", () => {
  // Property: hand arithmetic of the example: one row, pitch 0.45 m, hole 0.118 + 0.003 m.
  const layout = headerHoles(exampleInputs({ layers: 1, perLayer: 14, groups: 1 }));
  assertEquals(layout.holes.length, 14);
  assertAlmostEquals(layout.run, 13 * 0.45, 1e-9);
  assertAlmostEquals(layout.strengthLeft, (0.45 - 0.121) / 0.45, 1e-9);
  assertEquals(layout.tooClose, false);
});

Deno.test("headerHoles() says so when two rows come too close around the pipe", () => {
  // Property: two rows at ±45° on a pipe of 0.16 m are 0.126 m apart, hardly more than a hole.
  const layout = headerHoles(exampleInputs({ groups: 1, header: 0.16 }));
  assertAlmostEquals(layout.ligament, 90 * Math.PI / 180 * 0.08 - 0.121, 1e-9);
  assert(layout.tooClose);
});
