import { assert, assertAlmostEquals, assertEquals } from "@std/assert";
import { normalStream } from "../../../lib/measured/demo/dice.ts";
import { fanDifference, pairedDifference } from "../../../lib/measured/flows/saving.ts";

/** Ten patients, extra hours of sleep by two drugs (Student 1908 [student-1908], the first paired example). */
const FIRST = [0.7, -1.6, -0.2, -1.2, -0.1, 3.4, 3.7, 0.8, 0, 2];
const SECOND = [1.9, 0.8, 1.1, 0.1, -0.1, 4.4, 5.5, 1.6, 4.6, 3.4];

Deno.test("pairedDifference(): Student's sleep data (Student 1908)", () => {
  // Source: Student 1908 [student-1908]: mean 1.58 h, t 4.06 with 9 degrees of freedom, 0.0028 two-sided
  const found = pairedDifference(SECOND.map((value, k) => value - FIRST[k]!))!;
  assertAlmostEquals(found.value, 1.58, 1e-9);
  assertEquals(found.count, 10);
  assertAlmostEquals(found.chance, 0.0028, 0.0001);
  assertAlmostEquals(found.low, 0.70, 0.005);
  assertAlmostEquals(found.high, 2.46, 0.005);
  assert(found.real);
});

/** Nights that hang together: each keeps a share of the one before. */
function tiedNights(seed: number, count: number, keep: number, mean: number): number[] {
  const draw = normalStream(seed, "nights");
  let now = draw();
  return Array.from({ length: count }, () => {
    now = keep * now + Math.sqrt(1 - keep * keep) * draw();
    return mean + now;
  });
}

Deno.test("pairedDifference(): in nights that hang together the 95 % range still holds the truth", () => {
  // Property: coverage of 200 made winters, of which a test that took nights as independent holds few
  let [held, naive] = [0, 0];
  for (let seed = 0; seed < 200; seed++) {
    const nights = tiedNights(seed, 150, 0.7, 0);
    const { low, high, value, effectiveCount, count } = pairedDifference(nights)!;
    if (low <= 0 && high >= 0) held++;
    const deviation = Math.sqrt(nights.reduce((sum, x) => sum + (x - value) ** 2, 0) / 149 / 150);
    if (Math.abs(value) <= 1.976 * deviation) naive++;
    assert(effectiveCount <= count);
  }
  assert(held >= 178, `${held} of 200`);
  assert(naive < 150, `independent nights: ${naive} of 200`);
});

Deno.test("pairedDifference(): gaps are left out, and few pairs are not tested", () => {
  // Property: no verdict from a handful of nights
  assertEquals(pairedDifference([1, 2, 3, NaN, 4, 5, 6]), null);
  assertEquals(pairedDifference([NaN, ...tiedNights(1, 30, 0, 2), NaN])!.count, 30);
});

Deno.test("fanDifference(): finds what the fan adds behind what the weather does", () => {
  // Property: known slopes of cold and sun, known lift, mild weeks with the fan off
  let held = 0;
  for (let seed = 0; seed < 100; seed++) {
    const [cold, sun, noise] = ["cold", "sun", "noise"].map((name) => normalStream(seed, name));
    const nights = Array.from({ length: 120 }, (_, k) => {
      const fan = k % 30 < 20;
      const outside = -5 + 6 * cold!() + (fan ? -3 : 3);
      const light = 1.5 + 0.5 * sun!();
      return {
        value: 4 - 0.3 * outside + 1.2 * light + (fan ? 2 : 0) + 0.5 * noise!(),
        drivers: [outside, light],
        fan,
      };
    });
    const { low, high, real } = fanDifference(nights)!;
    assert(real);
    if (low <= 2 && high >= 2) held++;
  }
  assert(held >= 88, `${held} of 100`);
  assertEquals(fanDifference([{ value: 1, drivers: [1], fan: true }]), null);
});
