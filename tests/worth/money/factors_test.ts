// Source: NIST Handbook 135 (1995), tables of discount factors [nist-hb135-1995]
import { assertAlmostEquals, assertThrows } from "@std/assert";
import fc from "fast-check";
import {
  capitalRecoveryFactor,
  escalatingPresentValueFactor,
  presentValueFactor,
  uniformPresentValueFactor,
} from "../../../lib/worth/money/factors.ts";

const PUBLISHED = [
  [0.03, 10, 0.7441, 8.5302, 0.11723],
  [0.03, 12, 0.7014, 9.954, 0.10046],
  [0.03, 15, 0.6419, 11.9379, 0.08377],
  [0.03, 20, 0.5537, 14.8775, 0.06722],
  [0.03, 25, 0.4776, 17.4131, 0.05743],
  [0.03, 30, 0.412, 19.6004, 0.05102],
  [0.05, 20, 0.3769, 12.4622, 0.08024],
  [0.07, 20, 0.2584, 10.594, 0.09439],
] as const;

Deno.test("single, uniform and recovery factors as NIST Handbook 135 prints them", () => {
  for (const [rate, years, single, uniform, recovery] of PUBLISHED) {
    assertAlmostEquals(presentValueFactor(rate, years), single, 5.1e-5);
    assertAlmostEquals(uniformPresentValueFactor(rate, years), uniform, 5.1e-5);
    assertAlmostEquals(capitalRecoveryFactor(rate, years), recovery, 5.1e-6);
  }
});

Deno.test("factors of escalating amounts, closed form of NIST Handbook 135", () => {
  assertAlmostEquals(escalatingPresentValueFactor(0.03, 0.02, 20), 18.081229, 5e-7);
  assertAlmostEquals(escalatingPresentValueFactor(0.03, 0.01, 20), 16.382723, 5e-7);
  assertAlmostEquals(escalatingPresentValueFactor(0.05, 0.03, 25), 19.657631, 5e-7);
});

const rates = fc.double({ min: -0.05, max: 0.3, noNaN: true });
const counts = fc.integer({ min: 1, max: 60 });

Deno.test("an escalating factor is the sum of its years", () => {
  fc.assert(fc.property(rates, rates, counts, (rate, escalation, years) => {
    let sum = 0;
    for (let year = 1; year <= years; year++) {
      sum += (1 + escalation) ** year * presentValueFactor(rate, year);
    }
    assertAlmostEquals(escalatingPresentValueFactor(rate, escalation, years) / sum, 1, 1e-9);
  }));
});

Deno.test("where price and rate rise alike each year counts in full", () => {
  fc.assert(fc.property(rates, counts, (rate, years) => {
    assertAlmostEquals(escalatingPresentValueFactor(rate, rate, years), years, 1e-9 * years);
  }));
});

Deno.test("a rate that is a per cent figure by mistake is refused", () => {
  assertThrows(() => presentValueFactor(3, 10), Error, "discount rate");
});
