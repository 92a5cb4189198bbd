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
import { curvePoints } from "../../lib/show/fan/charts.ts";
import { dayRanges, heatFlowsByMonth } from "../../lib/show/house/year_charts.ts";
import { type DisplayItem } from "../../lib/show/kit/figure.ts";
import { hourlyMeansByDay } from "../../lib/show/measured/charts.ts";
import { frostDays, twoEstimates } from "../../lib/show/soil/frost_charts.ts";
import { heatDays, seasonRecoveries } from "../../lib/show/store/days_charts.ts";
import { yearFlows } from "../../lib/show/store/flow_chart.ts";
import { cellLimits } from "../../lib/show/store/ground_charts.ts";
import { heatMonths } from "../../lib/show/store/heat_charts.ts";
import { lengthRows } from "../../lib/show/tubes/charts.ts";
import { GLAZINGS } from "../../lib/house/mod.ts";
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

const CROP = { name: "spinach", killingLimit: -7 };

const FIGURES: Readonly<Record<string, readonly [() => DisplayItem, readonly string[]]>> = {
  monthlyClimate: [() => climate.monthlyChart(climateResult), ["degC", "kWh/m²"]],
  temperatureCarpet: [() => climate.temperatureCarpet(climateYear), ["degC", "day, h"]],
  radiationCarpet: [() => climate.radiationCarpet(climateYear), ["W/m²"]],
  sunPath: [() => climate.sunPathChart(climateYear.place), ["degrees"]],
  outdoorDuration: [() => climate.durationChart(climateYear, climateResult), ["degC", ", h"]],
  soilProfile: [() => soil.profileChart(sample.soilResult), ["degC", "depth, m"]],
  soilField: [() => soil.fieldChart(sample.soilResult), ["degC", "depth, m"]],
  frostSnow: [() => soil.frostSnowChart(sample.soilResult), ["frost depth (down), m"]],
  twoEstimates: [() => soil.twoEstimatesChart(sample.soilResult), ["tube depth, degC"]],
  soilSensitivity: [() => soil.sensitivityChart(sample.soilResult), ["degC", "depth, m"]],
  planeMonths: [() => climate.planeMonthsChart(planes), ["kWh/m²"]],
  glazingAngle: [() => climate.glazingAngleChart(GLAZINGS[0]!, GLAZINGS), ["degrees", "–"]],
  losses: [() => house.lossesChart(houseResult), ["W/K"]],
  freeRunning: [() => house.freeRunningDurationChart(houseResult, climateYear), ["degC"]],
  freeRunningYear: [
    () => house.freeRunningYearChart(houseResult, climateYear, CROP),
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
            pressureDrop: 2 * length,
          })),
        })),
        tubesResult,
        8,
      ),
    ["kWh", "length, m"],
  ],
  tubeFlow: [() => headers.tubeFlowChart(headersResult, tubesResult), ["mean, –"]],
  headerPressure: [() => headers.pressureChart(headersResult, tubesResult), ["Pa"]],
  fan: [() => fan.curveChart(sample.fanResult, sample.fanInputs), ["Pa", "m³/s"]],
  storeWeek: [() => store.weekChart(storeResult, climateYear), ["degC", "kW"]],
  storeCarpet: [() => store.temperatureCarpet(storeResult), ["degC"]],
  storeDuration: [() => store.durationChart(storeResult), ["degC", ", h"]],
  storeYear: [() => store.yearChart(storeResult, climateYear), ["degC"]],
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

Deno.test("heatMonths() splits the year's heat into in and out without losing any", () => {
  // Property: conservation
  const months = heatMonths(storeResult.year);
  const net = months.reduce(
    (sum, row) => sum + row.sensibleIn + row.latentIn - row.sensibleOut - row.latentOut,
    0,
  );
  const { sensible, latent } = storeResult.year;
  const expected = sensible.reduce((sum, value, hour) => sum + value + latent[hour]!, 0) / 1000;
  assert(Math.abs(net - expected) < 1e-6 * Math.abs(expected));
});

Deno.test("tubeLengthRows() passes through the study's own point and grows by friction only", () => {
  // Property: consistent with the chapter's result at the study's length
  const rows = lengthRows(tubesResult, 40);
  const own = rows[20]!;
  assert(Math.abs(own.length - tubesResult.length) < 1e-9);
  assert(Math.abs(own.effectiveness - tubesResult.effectiveness) < 1e-9);
  assert(Math.abs(own.pressureDrop - tubesResult.pressureDrop) < 1e-9);
  for (let i = 1; i < rows.length; i++) assert(rows[i]!.pressureDrop > rows[i - 1]!.pressureDrop);
});

Deno.test("fanCurvePoints() passes through the ends of the curve and never rises above its peak", () => {
  // Property: the drawn curve is the one used, without overshoot
  const points = curvePoints(sample.fanResult);
  const pressures = sample.fanCurve.staticPressure;
  assertEquals(points[0]!.y, pressures[0]);
  assert(Math.abs(points.at(-1)!.y - pressures.at(-1)!) < 1e-9);
  for (const point of points) assert(point.y <= Math.max(...pressures) + 1e-9);
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

Deno.test("dayRanges() keeps the mean between lowest and highest, and every hour in its day", () => {
  // Property: order, and the mean of the days is the mean of the year
  const { airTemperature } = houseResult.freeRunning;
  const days = dayRanges(airTemperature);
  assertEquals(days.length, 365);
  for (const day of days) assert(day.low <= day.mean && day.mean <= day.high);
  const mean = days.reduce((sum, day) => sum + day.mean, 0) / 365;
  const year = airTemperature.reduce((sum, value) => sum + value, 0) / 8760;
  assert(Math.abs(mean - year) < 1e-9);
});

Deno.test("heatFlowsByMonth() adds up to the flows of the year, heat out of the floor above zero", () => {
  // Property: conservation and sign
  const rows = heatFlowsByMonth(houseResult.heated);
  const total = (name: string) =>
    rows.filter((row) => row.name === name).reduce((sum, row) => sum + row.heat, 0);
  const year = (series: Float64Array) => series.reduce((sum, value) => sum + value, 0) / 1000;
  const { glazing, floor } = houseResult.heated;
  assert(Math.abs(total("glazing") - year(glazing)) < 1e-6 * Math.abs(year(glazing)));
  assert(Math.abs(total("floor soil") - year(floor)) < 1e-6);
  assert(rows.find((row) => row.name === "floor soil" && row.month === "Jan")!.heat > 0);
});

Deno.test("hourlyMeansByDay() gives one point an hour and keeps the mean", () => {
  // Property: averages
  const series = Float64Array.from({ length: 48 }, (_, i) => i % 12);
  const points = hourlyMeansByDay(series, 300);
  assertEquals(points.map((point) => point.y), [5.5, 5.5, 5.5, 5.5]);
  assertEquals(points[0]!.x, 0.5 / 24);
});

Deno.test("frostDays() finds both ends of the frozen ground between the depths of the map", () => {
  // Property: straight profiles with known crossings; thawed from above; all thawed
  const profile = (values: readonly number[]) => ({
    ...sample.soilResult,
    field: { depths: [0, 1, 2], temperature: values.map((value) => Float64Array.of(value)) },
  });
  const [frozen] = frostDays(profile([-3, -1, 3]));
  assertEquals([frozen!.top, frozen!.bottom], [0, 1.25]);
  const [thawing] = frostDays(profile([2, -2, 2]));
  assertEquals([thawing!.top, thawing!.bottom], [0.5, 1.5]);
  const [thawed] = frostDays(profile([2, 1, 3]));
  assertEquals(thawed!.top, thawed!.bottom);
});

Deno.test("twoEstimates() meets the table of the chapter at a depth of the table", () => {
  // Property: no interpolation error at a node
  const tubeDepth = sample.soilResult.depths[2]!;
  const rows = twoEstimates({ ...sample.soilResult, tubeDepth });
  for (const row of rows) {
    const found = sample.soilResult.monthly[row.month]![2]!;
    assert(Math.abs(row.column - found) < 1e-12);
  }
});

Deno.test("charts of a house that needs no heat say so and keep their axes", () => {
  // Property: warm climates
  const warm = {
    ...houseResult,
    heatDemand: 0,
    heatDemandByMonth: new Array<number>(12).fill(0),
    heated: { ...houseResult.heated, heater: new Float64Array(8760) },
  };
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
  const words = climate.planeMonthsChart(planes)["text/plain"];
  assert(words.includes("blocks 3 % of the light"), words.slice(0, 400));
  const open = planes.map((plane) => ({
    ...plane,
    months: plane.months.map((month) => ({ ...month, open: month.hayDavies })),
  }));
  assert(climate.planeMonthsChart(open)["text/plain"].includes("has no skyline"));
});

Deno.test("heatDays() and seasonRecoveries() keep the year's heat, wherever a day starts", () => {
  // Property: conservation
  const months = heatMonths(storeResult.year);
  const total = months.reduce((sum, row) => sum + row.sensibleIn + row.latentIn, 0);
  for (const start of [0, 6]) {
    const days = heatDays(storeResult.year, start);
    const heat = days.reduce((sum, row) => sum + row.sensibleIn + row.latentIn, 0);
    assert(Math.abs(heat - total) < 1e-9 * total);
  }
  const rows = seasonRecoveries(storeResult);
  const quarters = rows.slice(0, 4).reduce((sum, row) => sum + row.heatIn, 0);
  assert(Math.abs(quarters - rows[4]!.heatIn) < 1e-9 * total);
  assert(Math.abs(rows[4]!.heatIn - total) < 1e-9 * total);
});

Deno.test("yearFlows() takes the floor apart into two flows whose difference is its sum", () => {
  // Property: conservation, and no other flow is changed
  const flows = yearFlows(storeResult);
  const down = flows.find((flow) => flow.from.startsWith("house floor"))!.heat;
  const up = flows.find((flow) => flow.to.startsWith("house floor"))!.heat;
  const net = storeResult.year.floor.reduce((sum, watt) => sum + watt / 1000, 0);
  assert(Math.abs(down - up - net) < 1e-9 * (down + up));
  assertEquals(flows.filter((flow) => !/floor/.test(flow.from + flow.to)).length, 2);
});
