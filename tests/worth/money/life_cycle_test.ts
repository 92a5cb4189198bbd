// Source: NIST Handbook 135 (1995), worked example of a retrofit over 20 years [nist-hb135-1995]
import { assertAlmostEquals, assertEquals, assertThrows } from "@std/assert";
import fc from "fast-check";
import { compareCosts, levelisedCost } from "../../../lib/worth/money/comparison.ts";
import {
  type CostPlan,
  lifeCycleCost,
  replacementYears,
  type ValueFactors,
} from "../../../lib/worth/money/life_cycle.ts";

const plan = (
  initial: number,
  fan: number,
  residual: number,
  energy: number,
  upkeep: number,
): CostPlan => ({
  initial,
  residual,
  replacements: [{ name: "fan", year: 12, amount: fan }],
  yearly: [
    { name: "electricity", amount: energy, escalation: 0.0017 },
    { name: "upkeep", amount: upkeep, escalation: 0 },
  ],
});
const base = plan(103_000, 12_000, 3_500, 20_000, 7_000);
const retrofit = plan(110_000, 12_500, 3_700, 13_000, 8_000);
const terms = { rate: 0.03, years: 20 };
/** The factors as the handbook rounds them. */
const rounded: ValueFactors = {
  single: (year) => year === 12 ? 0.701 : 0.554,
  yearly: ({ name }) => name === "electricity" ? 15.13 : 14.88,
};

Deno.test("worked example of NIST Handbook 135 to the unit", () => {
  assertEquals(Math.round(lifeCycleCost(base, terms, rounded).total), 516_233);
  assertEquals(Math.round(lifeCycleCost(retrofit, terms, rounded).total), 432_443);
  const earned = compareCosts(retrofit, base, terms, rounded);
  assertEquals(Math.round(earned.netSavings), 83_790);
  assertEquals(Math.round(earned.operationSaved), 91_030);
  assertAlmostEquals(earned.extraInvestment, 7_239.7, 0.06);
  assertAlmostEquals(earned.savingsToInvestment!, 12.57, 0.005);
  assertAlmostEquals(earned.adjustedRateOfReturn!, 0.169, 5e-5);
});

Deno.test("the same with factors that are not rounded, within a thousandth", () => {
  assertAlmostEquals(lifeCycleCost(base, terms).total / 516_233, 1, 1e-3);
  assertAlmostEquals(compareCosts(retrofit, base, terms).netSavings / 83_790, 1, 2e-3);
});

const money = fc.integer({ min: 0, max: 1e7 }).map((cents) => cents / 100);
const anyPlan = fc.record({
  initial: money,
  residual: money,
  replacements: fc.array(
    fc.record({ name: fc.constant("fan"), year: fc.integer({ min: 1, max: 20 }), amount: money }),
    { maxLength: 3 },
  ),
  yearly: fc.array(
    fc.record({
      name: fc.constant("fuel"),
      amount: money,
      escalation: fc.double({ min: -0.05, max: 0.1, noNaN: true }),
    }),
    { maxLength: 3 },
  ),
});

Deno.test("no change saves and pays back exactly nothing", () => {
  fc.assert(fc.property(anyPlan, (one) => {
    const earned = compareCosts(one, one, terms);
    assertEquals([earned.netSavings, earned.extraInvestment, earned.operationSaved], [0, 0, 0]);
    assertEquals(earned.savingsToInvestment, null);
  }));
});

Deno.test("doubling every price doubles every cost", () => {
  fc.assert(fc.property(anyPlan, (one) => {
    const twice = {
      initial: 2 * one.initial,
      residual: 2 * one.residual,
      replacements: one.replacements.map((each) => ({ ...each, amount: 2 * each.amount })),
      yearly: one.yearly.map((each) => ({ ...each, amount: 2 * each.amount })),
    };
    assertEquals(lifeCycleCost(twice, terms).total, 2 * lifeCycleCost(one, terms).total);
  }));
});

Deno.test("net savings are the sum over the years, whatever the plans", () => {
  fc.assert(fc.property(anyPlan, anyPlan, (one, other) => {
    const byYear = (each: CostPlan) => {
      let total = each.initial - each.residual / 1.03 ** 20;
      for (let year = 1; year <= 20; year++) {
        for (const { amount, escalation } of each.yearly) {
          total += amount * ((1 + escalation) / 1.03) ** year;
        }
        for (const bought of each.replacements) {
          if (bought.year === year) total += bought.amount / 1.03 ** year;
        }
      }
      return total;
    };
    assertAlmostEquals(
      compareCosts(one, other, terms).netSavings,
      byYear(other) - byYear(one),
      0.01,
    );
  }));
});

const simple = (initial: number, yearly: number, replaced = 0): CostPlan => ({
  initial,
  residual: 0,
  replacements: replaced === 0 ? [] : [{ name: "fan", year: 10, amount: replaced }],
  yearly: [{ name: "fuel", amount: yearly, escalation: 0 }],
});

Deno.test("paybacks of plans that can be done by hand", () => {
  const idle = simple(0, 1000);
  const earned = compareCosts(simple(4500, 0), idle, { rate: 0, years: 20 });
  assertAlmostEquals(earned.simplePayback!, 4.5, 1e-12);
  assertAlmostEquals(earned.discountedPayback!, 4.5, 1e-12);
  const discounted = compareCosts(simple(4500, 0), idle, { rate: 0.05, years: 20 });
  assertAlmostEquals(discounted.simplePayback!, 4.5, 1e-12);
  const afterFive = (1 - 1.05 ** -5) / 0.05 * 1000;
  assertAlmostEquals(
    discounted.discountedPayback!,
    5 + (4500 - afterFive) * 1.05 ** 6 / 1000,
    1e-9,
  );
  assertEquals(compareCosts(simple(25_000, 0), idle, terms).simplePayback, null);
  assertEquals(compareCosts(simple(0, 900), idle, terms).simplePayback, 0);
});

Deno.test("a replacement that eats the savings puts the payback off", () => {
  const earned = compareCosts(simple(9500, 0, 3000), simple(0, 1000), { rate: 0, years: 20 });
  assertAlmostEquals(earned.simplePayback!, 12.5, 1e-12);
});

Deno.test("a levelised cost is the price at which the yield pays for the plan", () => {
  fc.assert(fc.property(anyPlan, fc.double({ min: 1, max: 1e5, noNaN: true }), (one, kWh) => {
    const price = levelisedCost(one, kWh, terms)!;
    const bought: CostPlan = { ...simple(0, price * kWh) };
    const total = lifeCycleCost(one, terms).total;
    assertAlmostEquals(lifeCycleCost(bought, terms).total, total, 1e-9 * (1 + Math.abs(total)));
  }));
  assertEquals(levelisedCost(base, 0, terms), null);
});

Deno.test("what wears out is bought again before the end, not at it", () => {
  assertEquals(replacementYears(8, 25), [8, 16, 24]);
  assertEquals(replacementYears(5, 20), [5, 10, 15]);
  assertEquals(replacementYears(30, 25), []);
  assertEquals(replacementYears(7.5, 20), [8, 15]);
});

Deno.test("a replacement outside the years is refused", () => {
  assertThrows(
    () => lifeCycleCost(plan(1, 1, 0, 1, 1), { rate: 0.03, years: 10 }),
    Error,
    "year 12",
  );
});
