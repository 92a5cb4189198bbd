import { assert, assertAlmostEquals, assertEquals } from "@std/assert";
import { houseUses } from "winterground/house/mod.ts";
import { rankMeasures, usualCollector } from "winterground/store/mod.ts";
import { priceQuantities, quantityTakeOff, readPriceList } from "winterground/worth/mod.ts";
import { alone, kilowattHours } from "../../lib/basics/mod.ts";
import { asItIsYears } from "../../lib/store/like_houses.ts";
import { reducedStores, settledTask } from "../../lib/store/runs.ts";
import { fuelWays, otherWays } from "../../lib/worth/other_ways.ts";
import { standInRequest } from "../store/stand_in.ts";
import { IDS, request as worthRequest } from "./example.ts";

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

const PLATE = "collector-plate,50,m2,EUR,20";
const everything = (more: readonly string[]) =>
  list([...IDS.map(([id, unit]) => `${id},1,${unit},EUR,`), ...more]);

Deno.test("the store with a plate collector goes through the same year, and its plate is priced by area", () => {
  // Property: one number with the store's own settled years; first cost by hand; a missing price named
  const store = standInRequest({ store: { slices: 1, spinUpYears: 0 } });
  const asked = (prices: ReturnType<typeof everything>) =>
    otherWays({ request: store, worth: worthRequest({ prices, contingency: 0.1 }) });
  const [way] = asked(everything([PLATE])).stores;
  assertEquals(way!.name, "heat store with a plate collector");
  const area = store.fan.airFlow / 0.05;
  const withPlate = { ...store, inputs: { ...store.inputs, collector: usualCollector(area) } };
  const [reduced] = alone(reducedStores([withPlate]));
  const held = settledTask.run({ ...reduced!, heated: true });
  const bare = alone(asItIsYears(store)).years.held;
  assertEquals(
    way!.saved,
    kilowattHours(bare.ledger.heater) - kilowattHours(held.ledger.heater),
  );
  const field = { ...worthRequest().field, collector: null };
  const plain = priceQuantities(quantityTakeOff(field), everything([]), 0.1).hired!;
  assertAlmostEquals(way!.capital! - plain, 1.1 * 50 * area, 1e-6);
  assertEquals(way!.missing, []);
  const [open] = asked(everything([])).stores;
  assertEquals([open!.capital, open!.costOfHeat, open!.missing], [null, null, ["collector-plate"]]);
  assertEquals(open!.saved, way!.saved);
});

Deno.test("a study with a plate is offered the store without it, and its own take-off holds the plate", () => {
  // Property: what is so already is no other way; a plate is never for nothing
  const plate = usualCollector(standInRequest().fan.airFlow / 0.05);
  const store = standInRequest({ store: { slices: 1, spinUpYears: 0, collector: plate } });
  const worth = worthRequest({ prices: everything([]) });
  const field = { ...worth.field, collector: plate };
  const [way, ...others] = otherWays({ request: store, worth: { ...worth, field } }).stores;
  assertEquals([way!.name, others], ["heat store without its plate collector", []]);
  assert(way!.capital !== null);
  const ids = (place: "inside" | "outside") =>
    quantityTakeOff({ ...field, collector: { ...plate, place } })
      .filter(({ id }) => id.startsWith("collector-")).map(({ id, amount }) => [id, amount]);
  assertEquals(ids("inside"), [["collector-plate", plate.area]]);
  assertEquals(ids("outside"), [
    ["collector-plate", plate.area],
    ["collector-box", plate.area],
    ["collector-duct", 4],
  ]);
});
