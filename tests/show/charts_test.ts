import { assert, assertEquals, assertMatch } from "@std/assert";
import * as climate from "winterground/climate";
import * as soil from "winterground/soil";
import * as house from "winterground/house";
import * as tubes from "winterground/tubes";
import * as headers from "winterground/headers";
import * as fan from "winterground/fan";
import * as measured from "winterground/measured";
import * as store from "winterground/store";
import * as study from "winterground/study";
import { type DisplayItem } from "../../lib/show/kit/figure.ts";
import { cellLimits } from "../../lib/show/store/ground_charts.ts";
import { glazedPlanes, glazingAngles, GLAZINGS, summariseHouse } from "../../lib/house/mod.ts";
import { HOUSE } from "../house/fixtures.ts";
import * as sample from "./sample.ts";

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

const speeds = [1, 2, 3].map((airSpeed) => ({
  ...sample.tubesResult,
  airSpeed,
  pressureDrop: 8.5 * airSpeed ** 2,
}));
const { climateYear, climateResult, houseResult, tubesResult, headersResult, storeResult } = sample;

const daylight = climate.daylight(climateYear.place);
const CROP = { name: "spinach", killingLimit: -7 };

const FIGURES: Readonly<Record<string, readonly [() => DisplayItem, readonly string[]]>> = {
  monthlyClimate: [() => climate.monthlyChart(climateResult), ["degC", "kWh/m²"]],
  temperatureCarpet: [() => climate.temperatureCarpet(climateYear), ["degC", "day, h"]],
  radiationCarpet: [() => climate.radiationCarpet(climateYear), ["W/m²"]],
  sunPath: [() => climate.sunPathChart(climateYear.place, daylight), ["degrees"]],
  outdoorDuration: [() => climate.durationChart(climateYear, climateResult), ["degC", ", h"]],
  soilProfile: [() => soil.profileChart(sample.soilResult), ["degC", "depth, m"]],
  soilField: [() => soil.fieldChart(sample.soilResult), ["degC", "depth, m"]],
  frostSnow: [() => soil.frostSnowChart(sample.soilResult), ["frost depth (down), m"]],
  twoEstimates: [() => soil.twoEstimatesChart(sample.soilResult), ["tube depth, degC"]],
  soilSensitivity: [() => soil.sensitivityChart(sample.soilResult), ["degC", "depth, m"]],
  planeMonths: [() => climate.planeMonthsChart(glazedPlanes(planes)), ["kWh/m²"]],
  glazingAngle: [() => climate.glazingAngleChart(GLAZINGS.map(glazingAngles)), ["degrees", "–"]],
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
  measures: [() => house.measuresChart(sample.ranking), ["kWh a year", "sealing"]],
  log: [() => measured.logChart(sample.logCheck, "second half"), ["degC", "humidity, %"]],
  tubeLength: [() => tubes.lengthChart(tubesResult), ["Pa", "length, m"]],
  tubeSpeed: [() => tubes.speedChart(speeds, tubesResult), ["Pa", "m/s"]],
  marginalHeat: [
    () =>
      tubes.marginalHeatChart(
        [1, 10].map((days) => ({
          days,
          rows: [5, 10, 15, 20].map((length) => ({
            length,
            heat: days * (1 - Math.exp(-length / 8)),
            marginalHeat: days * Math.exp(-length / 8) / 8,
            marginalHeatPerDay: Math.exp(-length / 8) / 8,
            pressureDrop: 2 * length,
          })),
        })),
        tubesResult,
        8,
      ),
    ["kWh", "length, m"],
  ],
  tubeFlow: [() => headers.tubeFlowChart(headersResult), ["mean, –"]],
  headerPressure: [() => headers.pressureChart(headersResult), ["Pa"]],
  fan: [() => fan.curveChart(sample.fanResult, sample.fanInputs), ["Pa", "m³/s"]],
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
  ways: [() => store.waysChart(sample.ways), ["degC", "kWh a year"]],
  variants: [() => store.variantsChart(sample.variants), ["kWh a year", ", K"]],
  firstSteps: [() => study.firstStepsChart(sample.steps), ["kWh a year", ", K"]],
};

/** SVG source out of a display item. */
function svgOf(item: DisplayItem): string {
  const found = /src="data:image\/svg\+xml;base64,([^"]+)"/.exec(item["text/html"]);
  assert(found !== null, "no embedded picture");
  return new TextDecoder().decode(Uint8Array.from(atob(found[1]!), (c) => c.charCodeAt(0)));
}

for (const [name, [draw, words]] of Object.entries(FIGURES)) {
  Deno.test(`${name} has axis units, alt text, a namespace, white ground and no broken number`, () => {
    // Property: what every picture must have
    const item = draw();
    const svg = svgOf(item);
    assertMatch(svg, /^<svg xmlns="http:\/\/www.w3.org\/2000\/svg"/);
    assert(svg.includes('fill="white"'));
    assert(!/NaN|undefined|Infinity/.test(svg), "broken number in the picture");
    for (const word of words) assert(svg.includes(word), `no "${word}" in the picture`);
    const alt = /<img alt="([^"]+)"/.exec(item["text/html"]);
    assert(alt !== null && alt[1]!.length > 30, "alt text missing or too short");
    assert(!/NaN|undefined|Infinity/.test(item["text/html"]), "broken number in the words");
    assert(item["text/plain"].length > 30);
    assert(item["text/html"].length < 500_000, "picture too large");
  });
}

Deno.test("the same data give the same bytes", () => {
  // Property: deterministic pictures, so that committed notebooks can be compared
  assertEquals(store.monthlyHeatChart(storeResult), store.monthlyHeatChart(storeResult));
});

Deno.test("numbers written into a picture keep their digits", () => {
  // Property: shortening coordinates leaves the words alone
  const svg = svgOf(fan.curveChart({ ...sample.fanResult, airFlow: 0.4567 }, sample.fanInputs));
  assert(svg.includes("0.457&#160;m³/s"), "the flow at the operating point");
  assert(!/="[^"]*\d\.\d{3}/.test(svg.replace(/font-size="[^"]*"/g, "")), "long coordinate");
});

Deno.test("figure() escapes words that look like markup", () => {
  // Property: no markup injection through names
  const item = house.lossesChart(houseResult);
  assert(!item["text/html"].includes("<insulated>"));
  assert(item["text/html"].includes("&lt;insulated&gt;"));
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

Deno.test("charts of a house that needs no heat say so and keep their axes", () => {
  // Property: warm climates
  const warm = summariseHouse(HOUSE, climateYear, {
    ...houseResult,
    heatDemand: 0,
    heatDemandByMonth: new Array<number>(12).fill(0),
    heated: { ...houseResult.heated, heater: new Float64Array(8760) },
  });
  const none = { ...sample.ranking[0]!, heatDemand: 0, saved: 0, savedShare: 0 };
  for (
    const item of [house.heatDemandChart(warm), house.measuresChart([none, none])]
  ) {
    assert(!/0\.0000/.test(svgOf(item)), "axis without a span");
    assert(/[Nn]o heat/.test(item["text/plain"]));
  }
  assert(!svgOf(house.coldestWeekChart(warm, climateYear)).includes("heater"));
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
