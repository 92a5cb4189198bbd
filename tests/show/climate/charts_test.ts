import { assert } from "@std/assert";
import * as climate from "winterground/climate";
import { glazedPlanes, glazingAngles, GLAZINGS } from "../../../lib/house/mod.ts";
import { checkFigures } from "../figure_rules.ts";
import { climateResult, climateYear } from "./sample.ts";

const planes = ["south wall", "roof"].map((name, index) => ({
  name,
  plane: { tilt: 90 - 60 * index, azimuth: 180 },
  area: 40,
  months: Array.from({ length: 12 }, (_, month) => ({
    hayDavies: 60 + month,
    isotropic: 55 + month,
    open: 62 + month,
  })),
}));

const daylight = climate.daylight(climateYear.place);

checkFigures({
  monthlyClimate: [() => climate.monthlyChart(climateResult), ["degC", "kWh/m²"]],
  temperatureCarpet: [() => climate.temperatureCarpet(climateYear), ["degC", "day, h"]],
  radiationCarpet: [() => climate.radiationCarpet(climateYear), ["W/m²"]],
  sunPath: [() => climate.sunPathChart(climateYear.place, daylight), ["degrees"]],
  outdoorDuration: [() => climate.durationChart(climateYear, climateResult), ["degC", ", h"]],
  planeMonths: [() => climate.planeMonthsChart(glazedPlanes(planes)), ["kWh/m²"]],
  glazingAngle: [() => climate.glazingAngleChart(GLAZINGS.map(glazingAngles)), ["degrees", "–"]],
});

Deno.test("planeMonthsChart() says what the skyline takes in winter, and nothing on an open site", () => {
  // Property: 62 kWh/m² open and 60 behind the skyline in January; 73 and 71, 63 and 61 beside it
  const words = climate.planeMonthsChart(glazedPlanes(planes))["text/plain"];
  assert(words.includes("blocks 3 % of the light"), words.slice(0, 400));
  const open = planes.map((plane) => ({
    ...plane,
    months: plane.months.map((month) => ({ ...month, open: month.hayDavies })),
  }));
  assert(climate.planeMonthsChart(glazedPlanes(open))["text/plain"].includes("has no skyline"));
});
