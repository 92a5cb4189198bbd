// Property: a price list says what is wrong with it, where, and never lets a missing price pass for nothing
import { assert, assertAlmostEquals, assertEquals, assertThrows } from "@std/assert";
import { defaultStudyPath, openStudy, startRun } from "winterground/study/mod.ts";
import {
  findPrice,
  type MaterialQuantity,
  priceQuantities,
  quantityTakeOff,
  readPriceList,
  takeOffInputs,
} from "winterground/worth/mod.ts";

const HEAD = "id,price,unit,currency,life_years,date,source";
const list = (...rows: string[]) => readPriceList([HEAD, ...rows].join("\n"), "prices.csv");
const row = (id: string, price: number, unit: string, life = "") =>
  `${id},${price},${unit},EUR,${life},2026-01-02,a shop`;
const quantity = (id: string, unit: string, order: number, part = "pit"): MaterialQuantity => ({
  id,
  part: part as MaterialQuantity["part"],
  item: id,
  amount: order,
  unit,
  order,
  basis: "",
});

Deno.test("readPriceList() reads prices, lives and their sources", () => {
  const prices = list(row("pipe", 2.5, "m"), row("fan", 300, "pieces", "8"));
  assertEquals(prices.currency, "EUR");
  assertEquals(prices.prices[1], {
    id: "fan",
    price: 300,
    unit: "pieces",
    life: 8,
    date: "2026-01-02",
    source: "a shop",
    line: 3,
  });
});

Deno.test("readPriceList() names file, line and column of what it refuses", () => {
  const refused: readonly (readonly [string[], string])[] = [
    [
      ["pipe,-1,m,EUR,,2026-01-02,a shop"],
      'prices.csv:2 (column "price"): Cannot use the price -1',
    ],
    [
      ["pipe,,m,EUR,,2026-01-02,a shop"],
      'prices.csv:2 (column "price"): Cannot leave this cell empty',
    ],
    [["pipe,two,m,EUR,,2026-01-02,a shop"], 'Cannot read "two" as a number'],
    [["pipe,1,m,EUR,0,2026-01-02,a shop"], "a life of 0 years"],
    [["pipe,1,,EUR,,2026-01-02,a shop"], "Cannot leave the unit empty"],
    [["pipe,1,m,EUR,,,a shop"], "Cannot leave the date empty"],
    [["pipe,1,m,EUR,,2026-01-02,"], "Cannot leave the source empty"],
    [[",1,m,EUR,,2026-01-02,a shop"], "Cannot leave the id empty"],
    [["pipe,1,m,,,2026-01-02,a shop"], "Cannot mix currencies"],
    [
      [row("pipe", 1, "m"), row("pipe", 2, "m")],
      'prices.csv:3 (column "id"): Cannot price "pipe" twice: line 2',
    ],
    [
      [row("pipe", 1, "m"), "fan,1,pieces,USD,,2026-01-02,a shop"],
      'prices.csv:3 (column "currency")',
    ],
  ];
  for (const [rows, words] of refused) assertThrows(() => list(...rows), Error, words);
});

Deno.test("a price for another unit is refused with its line; m² is m2", () => {
  const prices = list(row("pipe", 1, "ft"), row("board", 4, "m2"));
  assertThrows(() => findPrice(prices, "pipe", "m"), Error, 'prices.csv:2 (column "unit")');
  assertEquals(findPrice(prices, "board", "m²")!.price, 4);
  assertEquals(findPrice(prices, "gravel", "m³"), null);
});

Deno.test("priceQuantities() adds up, with and without hired labour, the house's board left out", () => {
  const prices = list(row("pipe", 2, "m"), row("labour", 30, "h"), row("board", 9, "m2"));
  const costs = priceQuantities(
    [
      quantity("pipe", "m", 100),
      quantity("labour", "h", 10, "labour"),
      quantity("board", "m²", 50, "house"),
    ],
    prices,
    0.1,
  );
  assertEquals([costs.bought, costs.labour, costs.missing.length], [200, 300, 0]);
  assertAlmostEquals(costs.hired!, 550, 1e-9);
  assertAlmostEquals(costs.own!, 220, 1e-9);
  assertAlmostEquals(costs.contingency, 50, 1e-9);
});

Deno.test("a missing price leaves the first cost open and is named; a price of 0 is one", () => {
  const quantities = [quantity("pipe", "m", 100), quantity("soil", "m³", 40)];
  const without = priceQuantities(quantities, list(row("pipe", 2, "m")), 0);
  assertEquals([without.hired, without.own, without.missing], [null, null, ["soil"]]);
  assertEquals(without.bought, 200);
  const free = priceQuantities(quantities, list(row("pipe", 2, "m"), row("soil", 0, "m3")), 0);
  assertEquals([free.hired, free.missing.length], [200, 0]);
  const labour = [...quantities, quantity("labour", "h", 5, "labour")];
  const own = priceQuantities(labour, list(row("pipe", 2, "m"), row("soil", 0, "m3")), 0);
  assertEquals([own.hired, own.own], [null, 200]);
});

Deno.test("the demo farm's list prices everything that its study takes", async () => {
  const run = startRun(await openStudy(defaultStudyPath()), { cacheFolder: null });
  const taken = takeOffInputs(run.study, { tubes: await run.tubes(), fan: await run.fan() });
  const costs = priceQuantities(quantityTakeOff(taken), run.study.worth.prices!, 0.1);
  assertEquals(costs.missing, []);
  assert(costs.rows.every(({ order }) => order > 0));
});
