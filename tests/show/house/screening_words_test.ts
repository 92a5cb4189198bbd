import { assert } from "@std/assert";
import * as house from "../../../lib/show/house/mod.ts";
import { climateYear } from "../climate/sample.ts";
import { HOUSE } from "../../house/fixtures.ts";
import { houseResult } from "./sample.ts";

const ledger = Object.fromEntries(
  [
    "solar",
    "glazing",
    "opaque",
    "leakage",
    "vent",
    "heater",
    "floor",
    "edge",
    "evaporation",
    "mass",
  ]
    .map((flow) => [flow, 1]),
) as unknown as typeof houseResult.freeRunningLedger;

Deno.test("everything the house chapter shows of its own year calls it the screening year", () => {
  // Property: "no store" and "without a store" are the words of the store chapter's year alone
  const items = {
    answer: house.answer(houseResult),
    frostTable: house.frostTable(houseResult, HOUSE),
    duration: house.freeRunningDurationChart(houseResult, climateYear),
    week: house.coldestWeekChart(houseResult, climateYear),
    year: house.freeRunningYearChart(houseResult, { name: "spinach", killingLimit: -9 }),
    humidity: house.humidityChart(houseResult, 0.9),
    demand: house.heatDemandChart(houseResult),
    flows: house.heatFlowsChart(houseResult),
    ledger: house.ledgerTable(
      { ...houseResult, freeRunningLedger: ledger, heatedLedger: ledger },
    ),
  };
  for (const [name, item] of Object.entries(items)) {
    const text = item["text/plain"] + item["text/html"].replaceAll(/base64,[^"]+/g, "");
    assert(/screening year/.test(text), `${name}: ${item["text/plain"]}`);
    assert(!/no store|without (a |the )?store/i.test(text), `${name}: ${item["text/plain"]}`);
  }
});
