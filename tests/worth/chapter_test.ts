// Property: money follows from the store's heat and the user's prices, and from nothing else
import { assert, assertAlmostEquals, assertEquals } from "@std/assert";
import { worthChapter } from "winterground/worth/mod.ts";
import { IDS, prices, request } from "./example.ts";

Deno.test("doubling every price doubles every cost and every saving", () => {
  const [once, twice] = [request(), request({ prices: prices(2) })].map(worthChapter);
  for (const key of ["capital", "netSavings", "costOfHeat"] as const) {
    assertAlmostEquals(twice!.earnings![key]! / once!.earnings![key]!, 2, 1e-12);
  }
  assertEquals(twice!.earnings!.simplePayback, once!.earnings!.simplePayback);
  assertEquals(twice!.earnings!.breakEvenFuel, once!.earnings!.breakEvenFuel);
});

Deno.test("at the break-even price of fuel the store saves exactly nothing", () => {
  const { earnings } = worthChapter(request());
  const factor = earnings!.breakEvenFuel!;
  const list = prices();
  const changed = {
    ...list,
    prices: list.prices.map((one) =>
      one.id === "fuel:propane" ? { ...one, price: one.price * factor } : one
    ),
  };
  const even = worthChapter(request({ prices: changed })).earnings!;
  assertAlmostEquals(even.netSavings / even.capital, 0, 1e-9);
});

Deno.test("the levelised cost is the price of heat at which the store saves nothing", () => {
  const result = worthChapter(request());
  const { earnings, heatPrice } = result;
  assertAlmostEquals(earnings!.costOfHeat! / (earnings!.breakEvenFuel! * heatPrice!), 1, 1e-9);
});

Deno.test("a store that saves no heat saves no money and gets no price for its heat", () => {
  const idle = { ...request(), energy: { backupHeat: 9000, backupHeatNoFan: 9000, fanEnergy: 0 } };
  const { earnings, verdict } = worthChapter(idle);
  assertEquals(earnings!.costOfHeat, null);
  assert(earnings!.netSavings < 0);
  assertEquals(verdict.word, "no");
});

Deno.test("the balance of the last year is the net savings but for what is left then", () => {
  const { earnings } = worthChapter(request());
  const { cashFlow, netSavings, plan } = earnings!;
  assertEquals(cashFlow.length, 26);
  assertEquals(cashFlow[0]!.balance, -earnings!.capital);
  assertAlmostEquals(cashFlow.at(-1)!.balance + plan.residual, netSavings, 1e-6);
});

Deno.test("every price that is missing is named, and money is left open", () => {
  for (const [id] of IDS.filter(([one]) => one !== "tube-bend")) {
    const result = worthChapter(request({ prices: prices(1, id) }));
    assertEquals(result.earnings, null, id);
    assert(result.missing.includes(id), id);
    assertEquals(result.verdict.reason, "prices missing");
    assert(result.notices.some(({ text }) => text.includes(id)), id);
  }
});

Deno.test("the owner's own work costs nothing and needs no rate", () => {
  const hired = worthChapter(request()).earnings!;
  const own = worthChapter(request({ labour: "own" })).earnings!;
  assert(own.capital < hired.capital);
  assertEquals([own.capital, own.capitalHiredLabour], [hired.capitalOwnLabour, hired.capital]);
  const { earnings } = worthChapter(request({ labour: "own", prices: prices(1, "labour") }));
  assertEquals([earnings!.capital, earnings!.capitalHiredLabour], [own.capital, null]);
});

Deno.test("a grant lowers the first cost by as much", () => {
  const [with_, without] = [request({ grant: 500 }), request()].map((one) =>
    worthChapter(one).earnings!
  );
  assertAlmostEquals(without!.capital - with_!.capital, 500, 1e-9);
});

Deno.test("without a price list there are quantities and no money", () => {
  const result = worthChapter(request({ prices: null }));
  assert(result.quantities.length > 20);
  assertEquals([result.costs, result.earnings, result.currency], [null, null, null]);
  assertEquals(result.verdict.first, ["worth.prices"]);
});

Deno.test("carbon saved is that of the fuel less that of the fans' electricity", () => {
  const result = worthChapter(request({ gridCarbon: 0.5 }));
  assertAlmostEquals(result.carbonSaved, 4000 / 0.85 * 0.227 - 900 * 0.5, 1e-9);
  const pump = worthChapter(request({ gridCarbon: 0.5, fuel: "heat-pump", efficiency: 2.5 }));
  assertAlmostEquals(pump.carbonSaved, 4000 / 2.5 * 0.5 - 900 * 0.5, 1e-9);
});
