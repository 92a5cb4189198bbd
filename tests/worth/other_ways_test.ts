import { assert, assertAlmostEquals, assertEquals } from "@std/assert";
import { houseUses } from "winterground/house/mod.ts";
import { rankMeasures } from "winterground/store/mod.ts";
import { readPriceList } from "winterground/worth/mod.ts";
import { fuelWays, otherWays } from "../../lib/worth/other_ways.ts";
import { standInRequest } from "../store/stand_in.ts";
import { request as worthRequest } from "./example.ts";

const list = (rows: readonly string[]) =>
  readPriceList(
    [
      "id,price,unit,currency,life_years,date,source",
      ...rows.map((row) => `${row},2026-01-02,made up`),
    ].join("\n"),
    "p.csv",
  );
const BOTH = ["fuel:propane,2,L,EUR,", "electricity,0.3,kWh,EUR,"];
const { inputs } = worthRequest({ prices: list(BOTH), discountRate: 0, years: 10 });

Deno.test("a heater's kilowatt-hour costs its fuel and its share of the heater, worked by hand", () => {
  // Property: without interest and escalation: price/(heating value · efficiency), and capital over
  // ten years of heat; propane 6.6 kWh/L at 85 %, a heat pump at 2.5
  const with_ = { ...inputs, prices: list([...BOTH, "heater:propane,2000,pieces,EUR,"]) };
  const rows = fuelWays(with_, 10_000, 50);
  const propane = rows.find(({ own }) => own)!;
  assertAlmostEquals(propane.fuelCost!, 2 / (6.6 * 0.85), 1e-12);
  assertAlmostEquals(propane.costOfHeat!, 2 / (6.6 * 0.85) + 2000 / 100_000, 1e-12);
  assertAlmostEquals(propane.costOfHour! * 50, propane.costOfHeat! * 10_000, 1e-9);
  const pump = rows.find(({ fuel }) => fuel === "heat pump")!;
  assertAlmostEquals(pump.fuelCost!, 0.3 / 2.5, 1e-12);
  assertEquals([pump.costOfHeat, pump.missing], [null, ["heater:heat-pump"]]);
});

Deno.test("a fuel or heater without a price is named, and never nought", () => {
  // Property: missing prices
  for (const row of fuelWays({ ...inputs, prices: null }, 10_000, 50)) {
    assertEquals([row.capital, row.fuelCost, row.costOfHeat], [null, null, null]);
    assertEquals(row.missing.length, 2);
  }
  const rows = fuelWays(inputs, 10_000, 50);
  const wood = rows.find(({ fuel }) => fuel.includes("firewood"))!;
  assertEquals(wood.missing, ["fuel:wood", "heater:wood"]);
});

Deno.test("doubling every price doubles what each fuel costs", () => {
  // Property: linear in money
  const priced = (factor: number) =>
    fuelWays(
      {
        ...inputs,
        prices: list([
          `fuel:propane,${2 * factor},L,EUR,`,
          `electricity,${0.3 * factor},kWh,EUR,`,
          `heater:propane,${2000 * factor},pieces,EUR,7`,
        ]),
      },
      10_000,
      50,
    ).find(({ own }) => own)!;
  assertAlmostEquals(priced(2).costOfHeat! / priced(1).costOfHeat!, 2, 1e-12);
});

Deno.test("a cover, a lower set point, a shorter house and beds empty in winter each save heat, as the same year says", () => {
  // Property: signs; one number with the ranking; a cover keeps the limit away from the crop
  const store = standInRequest({ store: { slices: 1, spinUpYears: 0 } });
  const { uses, heatWorth, currency } = otherWays({
    request: store,
    worth: worthRequest({ prices: list([...BOTH, "measure:row-cover,1,m2,EUR,"]) }),
  });
  assertEquals(uses.length, 4);
  assertEquals(uses[0]!.name, "row cover over the crop");
  assertEquals(uses.slice(1).map(({ capital, costOfHeat }) => [capital, costOfHeat]), [
    [null, null],
    [null, null],
    [null, null],
  ]);
  assertEquals(uses[0]!.capital, store.houseInputs.length * store.houseInputs.width);
  assert(uses.every(({ saved }) => saved > 0));
  assertAlmostEquals(heatWorth!, 2 / (6.6 * 0.85), 1e-12);
  assertEquals(currency, "EUR");
  const [cover] = houseUses(store.houseInputs);
  const row = rankMeasures(store, undefined, [cover!])[1]!;
  assertEquals(uses[0]!.saved, row.saved);
  assert(uses[0]!.cropHoursAvoided >= row.cropHoursAvoided);
  assertAlmostEquals(uses[0]!.coldestHourGain, row.coldestHourGain + 2, 1e-9);
});

Deno.test("beds empty in winter are offered where there is a crop and heat in winter, and only there", () => {
  // Property: what is so already is no other way
  const { houseInputs } = standInRequest();
  const offered = (change: Partial<typeof houseInputs>) =>
    houseUses({ ...houseInputs, ...change }).some(({ id }) => id === "crop-calendar");
  assert(offered({}));
  assert(!offered({ heatSeason: "1 Apr to 30 Nov" }));
  assert(!offered({ crop: "bare" }));
});
