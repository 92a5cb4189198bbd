// Property: hand arithmetic of what wears out and what is left
import { assertAlmostEquals, assertEquals } from "@std/assert";
import { heatOnly, type PlanParts, storePlan } from "winterground/worth/mod.ts";

const PARTS: PlanParts = {
  heat: { price: 0.2, escalation: 0.01 },
  electricity: { price: 0.3, escalation: 0.02 },
  terms: { rate: 0.03, years: 25 },
};
const row = (item: string, cost: number, life: number | null) => ({
  id: item,
  part: "air and control" as const,
  item,
  amount: 1,
  unit: "pieces",
  order: 1,
  basis: "",
  price: cost,
  cost,
  life,
});
const plan = (...rows: ReturnType<typeof row>[]) =>
  storePlan({ initial: 5000, rows, backupHeat: 1000, fanEnergy: 100, upkeep: 50 }, PARTS);

Deno.test("what wears out is bought again, and half of the last fan is left after half its life", () => {
  const { replacements, residual } = plan(row("fan", 300, 10), row("pipe", 900, null));
  assertEquals(replacements.map(({ year, amount }) => [year, amount]), [[10, 300], [20, 300]]);
  assertAlmostEquals(residual, 150, 1e-9);
});

Deno.test("what outlasts the years is not bought again and is worth the rest of its life", () => {
  const { replacements, residual } = plan(row("cover", 600, 30));
  assertEquals(replacements, []);
  assertAlmostEquals(residual, 100, 1e-9);
});

Deno.test("fuel, electricity and upkeep are paid each year at their prices", () => {
  assertEquals(plan().yearly.map(({ amount, escalation }) => [amount, escalation]), [
    [200, 0.01],
    [30, 0.02],
    [50, 0],
  ]);
  assertEquals(heatOnly(2000, PARTS).yearly.map(({ amount }) => amount), [400]);
});
