import { assert, assertEquals } from "@std/assert";
import * as store from "winterground/store";
import { cellLimits } from "../../../lib/show/kit/cell_limits.ts";
import { checkFigures } from "../figure_rules.ts";
import { climateYear } from "../climate/sample.ts";
import { tubesResult } from "../tubes/sample.ts";
import { storeResult, variants, ways } from "./sample.ts";

checkFigures({
  storeWeek: [() => store.weekChart(storeResult, climateYear), ["degC", "kW"]],
  storeCarpet: [() => store.temperatureCarpet(storeResult), ["degC"]],
  storeDuration: [() => store.durationChart(storeResult), ["degC", ", h"]],
  storeYear: [() => store.yearChart(storeResult), ["degC"]],
  monthlyHeat: [() => store.monthlyHeatChart(storeResult), ["kWh"]],
  cumulativeHeat: [() => store.cumulativeHeatChart(storeResult), ["kWh"]],
  soilSection: [() => store.soilSectionChart(storeResult, tubesResult), ["degC", "depth, m"]],
  quarters: [() => store.quartersChart(storeResult), ["kWh"]],
  dailyHeat: [() => store.dailyHeatChart(storeResult), ["kWh a day"]],
  stateOfCharge: [() => store.stateOfChargeChart(storeResult), ["charge, %"]],
  heatFlow: [() => store.heatFlowChart(storeResult), ["kWh", "soil"]],
  soilWeeks: [() => store.soilWeeksChart(storeResult, 1), ["degC", "1 Jan"]],
  ways: [() => store.waysChart(ways), ["degC", "kWh a year"]],
  variants: [() => store.variantsChart(variants), ["kWh a year", ", K"]],
});

Deno.test("the same data give the same bytes", () => {
  // Property: deterministic pictures, so that committed notebooks can be compared
  assertEquals(store.monthlyHeatChart(storeResult), store.monthlyHeatChart(storeResult));
});

Deno.test("cellLimits() puts each centre between its limits and leaves no gap", () => {
  // Property: cells of a section cover it
  const centres = [-3, -1, 0, 0.5, 2];
  const limits = cellLimits(centres);
  assertEquals(limits.length, centres.length + 1);
  centres.forEach((centre, index) => {
    assert(limits[index]! < centre && centre < limits[index + 1]!);
  });
});
