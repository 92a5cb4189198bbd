// Property: a figure without a value says why
import { assert, assertEquals } from "@std/assert";
import { worth } from "winterground/worth/mod.ts";
import { worthChapter } from "winterground/worth/mod.ts";
import { prices, request } from "./example.ts";

const figuresOf = (...given: Parameters<typeof request>) =>
  Object.fromEntries(worth.figures(worthChapter(request(...given))));

Deno.test("money figures carry their currency, and a band where doubt was computed", () => {
  const figures = figuresOf();
  assertEquals(figures["worth.capital"]!.unit, "EUR");
  assertEquals(figures["worth.costOfHeat"]!.unit, "EUR/kWh");
  for (const key of ["worth.capital", "worth.netPresentValue", "worth.costOfHeat"]) {
    const { low, value, high } = figures[key]!;
    assert(low! < Number(value) && Number(value) < high!, key);
  }
});

Deno.test("without a price every money figure is empty and names it; the verdict stands", () => {
  const figures = figuresOf({ prices: prices(1, "thermostat") });
  for (const [key, { value, label }] of Object.entries(figures)) {
    if (["worth.verdict", "worth.bestMeasure", "worth.designFaults"].includes(key)) continue;
    assertEquals(value, null, key);
    assert(label.includes("thermostat"), label);
  }
  assertEquals(figures["worth.verdict"]!.value, "not yet");
});

Deno.test("a payback that never comes says so", () => {
  const dear = figuresOf({ prices: prices(1), upkeep: 0.3 })["worth.payback"]!;
  assertEquals(dear.value, null);
  assert(dear.label.endsWith("never within the years looked at"), dear.label);
});
