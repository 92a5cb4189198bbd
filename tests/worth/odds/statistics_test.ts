// Source: closed forms of the Gumbel and generalised extreme value distributions; Wilson's interval
import { assert, assertAlmostEquals, assertEquals, assertThrows } from "@std/assert";
import fc from "fast-check";
import { normalDraws } from "../../../lib/climate/winters/streams.ts";
import {
  atLeastOnce,
  chance,
  gumbelFactor,
  pairedDifference,
  rareValue,
  returnLevel,
} from "../../../lib/worth/odds/statistics.ts";

Deno.test("Gumbel frequency factor of 50 years is 2.592 (Chow 1951, from memory)", () => {
  assertAlmostEquals(gumbelFactor(50), 2.5923, 5e-5);
});

Deno.test("Gumbel variates of 2, 10, 30, 50 years and a shape of -0.2, closed form", () => {
  const standard = { location: 0, scale: 1, shape: 0 };
  for (
    const [period, variate] of [[2, 0.3665], [10, 2.2504], [30, 3.3843], [50, 3.9019]] as const
  ) {
    assertAlmostEquals(returnLevel(standard, period), variate, 5e-5);
    const mean = 0.5772156649;
    const factor = (variate - mean) / (Math.PI / Math.sqrt(6));
    assertAlmostEquals(gumbelFactor(period), factor, 1e-4);
  }
  const bounded = { location: 0, scale: 1, shape: -0.2 };
  assertAlmostEquals(returnLevel(bounded, 10), 1.8121, 5e-5);
  assertAlmostEquals(returnLevel(bounded, 30), 2.4589, 5e-5);
  assertAlmostEquals(returnLevel({ ...bounded, shape: 1e-9 }, 30), 3.3843, 5e-5);
});

Deno.test("Wilson's interval of 0, 6 and 20 of 200", () => {
  const expected = [[0, 0, 0.0188], [6, 0.0138, 0.0639], [20, 0.0657, 0.1494]] as const;
  for (const [happened, low, high] of expected) {
    const found = chance(happened, 200);
    assertAlmostEquals(found.low, low, 5e-5);
    assertAlmostEquals(found.high, high, 5e-5);
  }
  assertEquals(chance(200, 200).high, 1);
});

Deno.test("a winter of one in ten comes in ten winters with 0.6513, none of thirty in twenty with 0.508", () => {
  assertAlmostEquals(atLeastOnce(10, 10), 0.6513, 5e-5);
  assertAlmostEquals(1 - atLeastOnce(30, 20), 0.508, 5e-4);
});

Deno.test("rareValue() of known ranks is that of the place (n + 1)p", () => {
  const values = Array.from({ length: 99 }, (_, place) => 98 - place);
  assertEquals(rareValue(values, 0.1).value, 9);
  assertEquals(rareValue(values, 0.5).value, 49);
  assertThrows(() => rareValue([1, 2, 3], 0.5), Error, "number of winters");
  assertThrows(() => rareValue(values, 0.001), Error, "share of the winters");
});

Deno.test("the band of a rare value covers the truth in nine of ten samples", () => {
  // 200 winters, true 10 % point of a standard normal: -1.28155; 400 trials, standard error 1.5 %
  let covered = 0;
  const trials = 400;
  for (let trial = 0; trial < trials; trial++) {
    const draw = normalDraws({ seed: 5, winter: trial, quantity: "hours" });
    const { low, high } = rareValue(Array.from({ length: 200 }, () => draw()), 0.1);
    if (low <= -1.28155 && -1.28155 <= high) covered++;
  }
  assertAlmostEquals(covered / trials, 0.9, 0.04);
});

const samples = fc.array(fc.double({ min: -50, max: 50, noNaN: true }), {
  minLength: 20,
  maxLength: 80,
});

Deno.test("a band holds its value; shifting the winters shifts both", () => {
  fc.assert(
    fc.property(samples, fc.double({ min: 0.06, max: 0.94, noNaN: true }), (values, share) => {
      const { value, low, high } = rareValue(values, share);
      assert(low <= value + 1e-9 && value <= high + 1e-9, `${low} ${value} ${high}`);
      const moved = rareValue(values.map((one) => one + 7), share);
      assertAlmostEquals(moved.value, value + 7, 1e-9);
    }),
  );
});

Deno.test("a way differs from itself by exactly nothing; pairing takes the weather out", () => {
  fc.assert(fc.property(samples, (values) => {
    assertEquals(pairedDifference(values, values), { mean: 0, error: 0, low: 0, high: 0 });
    const better = pairedDifference(values.map((one) => one + 2), values);
    assertAlmostEquals(better.mean, 2, 1e-9);
    assertAlmostEquals(better.error, 0, 1e-9);
  }));
});

Deno.test("binomial ranks of the bands of 90 and 95 % about the 10 % point of 200, by exact sums", () => {
  const values = Array.from({ length: 200 }, (_, place) => place + 1);
  const band = (cover?: number) => {
    const { low, high } = rareValue(values, 0.1, cover);
    return [low, high];
  };
  assertEquals(band(), [13, 28]);
  assertEquals(band(0.95), [12, 30]);
});
