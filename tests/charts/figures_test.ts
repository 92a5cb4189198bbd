import { assert, assertEquals, assertMatch } from "@std/assert";
import * as charts from "../../lib/charts/mod.ts";
import * as sample from "./sample.ts";

const speeds = [1, 2, 3].map((airSpeed) => ({
  ...sample.tubesResult,
  airSpeed,
  pressureDrop: 8.5 * airSpeed ** 2,
}));
const { climateYear, climateResult, houseResult, tubesResult, headersResult, storeResult } = sample;

const FIGURES: Readonly<Record<string, readonly [() => charts.DisplayItem, readonly string[]]>> = {
  monthlyClimate: [() => charts.monthlyClimateChart(climateResult), ["degC", "kWh/m²"]],
  temperatureCarpet: [() => charts.temperatureCarpet(climateYear), ["degC", "day, h"]],
  radiationCarpet: [() => charts.radiationCarpet(climateYear), ["W/m²"]],
  sunPath: [() => charts.sunPathChart(climateYear.place), ["degrees"]],
  outdoorDuration: [() => charts.outdoorDurationChart(climateYear, climateResult), ["degC", ", h"]],
  soilProfile: [() => charts.soilProfileChart(sample.soilResult), ["degC", "depth, m"]],
  soilField: [() => charts.soilFieldChart(sample.soilResult), ["degC", "depth, m"]],
  losses: [() => charts.lossesChart(houseResult), ["W/K"]],
  freeRunning: [() => charts.freeRunningDurationChart(houseResult, climateYear), ["degC"]],
  coldestWeek: [() => charts.coldestWeekChart(houseResult, climateYear), ["degC", "W/m²"]],
  tubeLength: [() => charts.tubeLengthChart(tubesResult), ["Pa", "length, m"]],
  tubeSpeed: [() => charts.tubeSpeedChart(speeds, tubesResult), ["Pa", "m/s"]],
  marginalHeat: [
    () =>
      charts.marginalHeatChart(
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
  tubeFlow: [() => charts.tubeFlowChart(headersResult, tubesResult), ["mean, –"]],
  headerPressure: [() => charts.headerPressureChart(headersResult, tubesResult), ["Pa"]],
  fan: [() => charts.fanChart(sample.fanResult, sample.fanInputs), ["Pa", "m³/s"]],
  storeWeek: [() => charts.storeWeekChart(storeResult, climateYear), ["degC", "kW"]],
  storeCarpet: [() => charts.storeCarpet(storeResult), ["degC"]],
  storeDuration: [() => charts.storeDurationChart(storeResult), ["degC", ", h"]],
  storeYear: [() => charts.storeYearChart(storeResult, climateYear), ["degC"]],
  monthlyHeat: [() => charts.monthlyHeatChart(storeResult), ["kWh"]],
  cumulativeHeat: [() => charts.cumulativeHeatChart(storeResult), ["kWh"]],
  soilSection: [() => charts.soilSectionChart(storeResult, tubesResult), ["degC", "depth, m"]],
  quarters: [() => charts.quartersChart(storeResult), ["kWh"]],
};

/** SVG source out of a display item. */
function svgOf(item: charts.DisplayItem): string {
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
  assertEquals(charts.monthlyHeatChart(storeResult), charts.monthlyHeatChart(storeResult));
});

Deno.test("figure() escapes words that look like markup", () => {
  // Property: no markup injection through names
  const item = charts.lossesChart(houseResult);
  assert(!item["text/html"].includes("<insulated>"));
  assert(item["text/html"].includes("&lt;insulated&gt;"));
});

Deno.test("heatMonths() splits the year's heat into in and out without losing any", () => {
  // Property: conservation
  const months = charts.heatMonths(storeResult.year);
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
  const rows = charts.tubeLengthRows(tubesResult, 40);
  const own = rows[20]!;
  assert(Math.abs(own.length - tubesResult.length) < 1e-9);
  assert(Math.abs(own.effectiveness - tubesResult.effectiveness) < 1e-9);
  assert(Math.abs(own.pressureDrop - tubesResult.pressureDrop) < 1e-9);
  for (let i = 1; i < rows.length; i++) assert(rows[i]!.pressureDrop > rows[i - 1]!.pressureDrop);
});

Deno.test("fanCurvePoints() passes through the ends of the curve and never rises above its peak", () => {
  // Property: the drawn curve is the one used, without overshoot
  const points = charts.fanCurvePoints(sample.fanResult);
  const pressures = sample.fanCurve.staticPressure;
  assertEquals(points[0]!.y, pressures[0]);
  assert(Math.abs(points.at(-1)!.y - pressures.at(-1)!) < 1e-9);
  for (const point of points) assert(point.y <= Math.max(...pressures) + 1e-9);
});

Deno.test("cellLimits() puts each centre between its limits and leaves no gap", () => {
  // Property: cells of a section cover it
  const centres = [-3, -1, 0, 0.5, 2];
  const limits = charts.cellLimits(centres);
  assertEquals(limits.length, centres.length + 1);
  centres.forEach((centre, index) => {
    assert(limits[index]! < centre && centre < limits[index + 1]!);
  });
});
