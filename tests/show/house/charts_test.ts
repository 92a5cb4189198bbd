import { assert } from "@std/assert";
import * as house from "winterground/house";
import { summariseHouse } from "../../../lib/house/mod.ts";
import { HOUSE } from "../../house/fixtures.ts";
import { checkFigures, svgOf } from "../figure_rules.ts";
import { climateYear } from "../climate/sample.ts";
import { houseResult } from "./sample.ts";

const CROP = { name: "spinach", killingLimit: -7 };

const ASSUMED = [
  ["plan", "as planned", 1400],
  ["leaves", "leaf area 4 all year", 1900],
  ["snow", "snow lies on the glazing", 1500],
].map(([about, name, hours]) => ({
  about: about as "plan",
  name: String(name),
  coldestHour: -12,
  hoursBelowFreezing: Number(hours),
  hoursBelowCropLimit: 70,
  heatDemand: 11000,
}));

checkFigures({
  assumptions: [
    () => house.assumptionsChart(ASSUMED),
    ["h", "leaf area", "degC"],
  ],
  losses: [() => house.lossesChart(houseResult), ["W/K"]],
  freeRunning: [() => house.freeRunningDurationChart(houseResult, climateYear), ["degC"]],
  freeRunningYear: [
    () => house.freeRunningYearChart(houseResult, CROP),
    ["degC", "kills spinach"],
  ],
  coldestWeek: [() => house.coldestWeekChart(houseResult, climateYear), ["degC", "W/m²"]],
  humidity: [() => house.humidityChart(houseResult, 0.9), ["humidity, %", "kg a day"]],
  heatFlows: [() => house.heatFlowsChart(houseResult), ["kWh", "leakage"]],
  heatDemand: [() => house.heatDemandChart(houseResult), ["kWh"]],
});

Deno.test("figure() escapes words that look like markup", () => {
  // Property: no markup injection through names
  const item = house.lossesChart(houseResult);
  assert(!item["text/html"].includes("<insulated>"));
  assert(item["text/html"].includes("&lt;insulated&gt;"));
});

Deno.test("charts of a house that needs no heat say so and keep their axes", () => {
  // Property: warm climates
  const warm = summariseHouse(HOUSE, climateYear, {
    ...houseResult,
    heatDemand: 0,
    heatDemandByMonth: new Array<number>(12).fill(0),
    heated: { ...houseResult.heated, heater: new Float64Array(8760) },
  });
  const demand = house.heatDemandChart(warm);
  assert(!/0\.0000/.test(svgOf(demand)), "axis without a span");
  assert(/[Nn]o heat/.test(demand["text/plain"]));
  assert(!svgOf(house.coldestWeekChart(warm, climateYear)).includes("heater"));
});
