import { assert, assertAlmostEquals, assertEquals } from "@std/assert";
import fc from "fast-check";
import { airProperties } from "../../lib/air/mod.ts";
import { findTube, fouledTube, freeSection, standingWater } from "../../lib/tubes/mod.ts";

const AIR = airProperties(15, 101325);
const TUBE = { product: findTube("corrugated-4in"), length: 15, air: AIR };

Deno.test("freeSection() is a whole circle when empty, half when half full, nothing when full", () => {
  // Property: limits of the circular segment
  const area = Math.PI * 0.1 ** 2 / 4;
  assertAlmostEquals(freeSection(0.1, 0).area, area, 1e-15);
  assertAlmostEquals(freeSection(0.1, 0).hydraulicDiameter, 0.1, 1e-12);
  const half = freeSection(0.1, 0.05);
  assertAlmostEquals(half.area, area / 2, 1e-15);
  assertAlmostEquals(half.perimeter, 0.1 * (Math.PI / 2 + 1), 1e-12);
  assertAlmostEquals(half.wallShare, 0.5, 1e-12);
  assertAlmostEquals(freeSection(0.1, 0.1).area, 0, 1e-15);
});

Deno.test("freeSection() takes away as much as the same depth leaves from the other side", () => {
  // Property: the two parts of a circle
  fc.assert(fc.property(fc.double({ min: 0, max: 0.1, noNaN: true }), (depth) => {
    const sum = freeSection(0.1, depth).area + freeSection(0.1, 0.1 - depth).area;
    assertAlmostEquals(sum, Math.PI * 0.1 ** 2 / 4, 1e-12);
  }));
});

Deno.test("fouledTube() adds nothing to a clean tube, more with depth, and shuts a full one", () => {
  // Property: limits and monotone
  assertEquals(fouledTube(TUBE, { depth: 0, length: 3 }, 0.015).addedLoss, 0);
  let before = 0;
  for (const depth of [0.01, 0.03, 0.05, 0.07, 0.09]) {
    const { addedLoss, blocked, wallShare } = fouledTube(TUBE, { depth, length: 3 }, 0.015);
    assert(!blocked && addedLoss > before, `${depth} m adds ${addedLoss}`);
    assert(wallShare < 1 && wallShare > 0.8);
    before = addedLoss;
  }
  const full = fouledTube(TUBE, { depth: 0.102, length: 3 }, 0.015);
  assertEquals([full.blocked, full.addedLoss], [true, Infinity]);
});

Deno.test("standingWater() drains where the slope beats the sag and holds a full parabola on the level", () => {
  // Property: geometry
  const sag = { depth: 0.02, span: 4, slope: 0.02, diameter: 0.102 };
  assertEquals(standingWater(sag), { depth: 0, length: 0, litres: 0, closed: false });
  const level = standingWater({ ...sag, slope: 0 });
  assertAlmostEquals(level.depth, 0.02, 1e-12);
  assertAlmostEquals(level.length, 4, 1e-12);
  const sloping = standingWater({ ...sag, slope: 0.01 });
  assertAlmostEquals(sloping.depth, 0.02 * 0.25, 1e-12);
  assert(sloping.litres > 0 && sloping.litres < level.litres);
});

Deno.test("standingWater() fills a wide tube with the volume of shallow segments", () => {
  // Property: for small depth a segment has area (2/3)·c·d with chord c = 2√(D·d): volume by hand
  const sag = { depth: 0.002, span: 3, slope: 0, diameter: 0.5 };
  // ∫ (4/3)·√D·d^1.5 dx with d = s(1 − z²): (4/3)√D·s^1.5·l·∫(1 − z²)^1.5 dz/2 over −1…1 = 3π/16
  const byHand = 4 / 3 * Math.sqrt(0.5) * 0.002 ** 1.5 * 3 * 3 * Math.PI / 16;
  assertAlmostEquals(standingWater(sag).litres / 1000, byHand, 0.01 * byHand);
});

Deno.test("standingWater() says that a deep sag shuts the tube", () => {
  // Property: definition
  const shut = standingWater({ depth: 0.15, span: 5, slope: 0.005, diameter: 0.102 });
  assert(shut.closed);
  assertAlmostEquals(shut.depth, 0.102, 1e-12);
});
