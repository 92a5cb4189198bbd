import { assert, assertAlmostEquals, assertEquals, assertLess } from "@std/assert";
import { sobolPoints } from "winterground/worth/mod.ts";
import { sampledEffects } from "../../../lib/worth/doubt/sampled_effects.ts";

Deno.test("shares of a polynomial are those of its closed form, from Sudret 2008 [sudret-2008] (from memory)", () => {
  // Source: Sudret 2008 [sudret-2008], from memory: squares of the coefficients of a normed expansion. By hand, for
  // a + b x + c y + d x y on 0 to 1 about the middle: variances b'²/12, c'²/12, d²/144 with
  // b' = b + d/2, c' = c + d/2
  const points = sobolPoints(64, 3, 5);
  const [b, c, d] = [3, -2, 4];
  const values = points.map(([x, y]) => 10 + b * x! + c * y! + d * x! * y!);
  const parts = [(b + d / 2) ** 2 / 12, (c + d / 2) ** 2 / 12, d ** 2 / 144];
  const all = parts[0]! + parts[1]! + parts[2]!;
  const { effects, foretold } = sampledEffects(points, values);
  assertAlmostEquals(foretold, 1, 1e-9);
  assertAlmostEquals(effects![0]!.first, parts[0]! / all, 1e-9);
  assertAlmostEquals(effects![1]!.first, parts[1]! / all, 1e-9);
  assertAlmostEquals(effects![0]!.total, (parts[0]! + parts[2]!) / all, 1e-9);
  assertAlmostEquals(effects![2]!.total, 0, 1e-12);
});

Deno.test("a square has the variance of its closed form, 4/45 of x² on −1 to 1", () => {
  // Source: moments of the uniform distribution: variance of x² on −1 to 1 is 1/5 − 1/9
  const points = sobolPoints(32, 2, 3);
  const values = points.map(([x, y]) => (2 * x! - 1) ** 2 + (2 * y! - 1));
  const { effects } = sampledEffects(points, values);
  const [square, line] = [1 / 5 - 1 / 9, 1 / 3];
  assertAlmostEquals(effects![0]!.first, square / (square + line), 1e-9);
  assertAlmostEquals(effects![1]!.total, line / (square + line), 1e-9);
});

Deno.test("a band of evenly spread values holds 95 % of them", () => {
  // Property: quantiles of a straight line
  const points = sobolPoints(1024, 1, 0);
  const { band } = sampledEffects(points, points.map(([x]) => 100 * x!));
  assertAlmostEquals(band[0], 2.5, 0.2);
  assertAlmostEquals(band[1], 97.5, 0.2);
});

Deno.test("where the sample does not tell, no shares are stated", () => {
  // Property: noise is not foretold; nought moves nothing; too few points for a line
  const points = sobolPoints(64, 4, 9);
  const noise = points.map((_, place) => Math.sin(1e4 * (place + 1) ** 2));
  const { effects, foretold } = sampledEffects(points, noise);
  assertEquals(effects, null);
  assertLess(foretold, 0.5);
  assertEquals(sampledEffects(points, points.map(() => 7)).effects![0], { first: 0, total: 0 });
  const few = sampledEffects(points.slice(0, 5), noise.slice(0, 5));
  assertEquals(few.effects, null);
  assert(few.band[0] <= few.band[1]);
});
