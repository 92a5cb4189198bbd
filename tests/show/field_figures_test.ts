import { assert, assertMatch } from "@std/assert";
import * as tubes from "winterground/tubes";
import * as headers from "winterground/headers";
import * as fan from "winterground/fan";
import { type DisplayItem } from "../../lib/show/kit/figure.ts";
import { summariseFan } from "../../lib/fan/mod.ts";
import { fanByMonth, type FieldSearch } from "../../lib/store/mod.ts";
import {
  costClasses,
  type FieldCandidate,
  fieldPicks,
  type TubeAlong,
} from "../../lib/tubes/mod.ts";
import { fanInputs, fanResult, headersResult, storeResult, tubesResult } from "./sample.ts";

const rows = Array.from({ length: 30 }, (_, index) => ({
  along: (index + 1) * 0.5,
  temperature: 15 + 12 * Math.exp(-index / 10),
  relativeHumidity: 0.9,
  dryTemperature: 15 + 12 * Math.exp(-index / 10),
  sensible: 60 * Math.exp(-index / 10),
  latent: 80 * Math.exp(-index / 10),
  dry: 61 * Math.exp(-index / 10),
}));

const along = {
  rows,
  wall: 14,
  intake: { temperature: 28, relativeHumidity: 0.7 },
  moist: { sensible: 300, latent: 400 },
} as unknown as TubeAlong;

const candidate = (index: number): FieldCandidate => ({
  tube: "corrugated-4in",
  count: 10 + index,
  length: 20,
  spacing: 0.4,
  layers: 2,
  depth: 0.6,
  totalLength: 20 * (10 + index),
  airSpeed: 3 - index / 10,
  pressureDrop: 60,
  heat: 20 + 2 * index,
  fanEnergy: 3 - index / 8,
  cost: 1000 + 100 * index,
});
const front = Array.from({ length: 12 }, (_, index) => candidate(index));
const own = { ...candidate(3), heat: 22 };
const search: FieldSearch = {
  front,
  picks: fieldPicks({ front, own }),
  costClasses: costClasses(front),
  allowed: 40,
  refused: { "air too fast": 9, "too wide for the floor": 4 },
  own,
};

const layouts = (["U", "Z", "centre", "two-ended"] as const).map((layout, index) => ({
  layout,
  result: {
    ...headersResult,
    groups: Array.from({ length: 20 }, (_, tube) => tube < 10 ? 0 : 1),
    unevenness: 0.02 * (index + 1),
    heatFactor: 0.999,
  },
}));

const spread = (mean: number) => ({ mean, low: mean - 0.02, high: mean + 0.01 });
const ways = ["flanged, all flush", "0 to 25 mm in, burrs on half"].map((name, index) => ({
  name,
  result: {
    trials: 100,
    flowMin: spread(0.95 - index / 20),
    flowMax: spread(1.05 + index / 20),
    heatAtEqualFlow: spread(1),
    heatAtEqualPressure: spread(1 - index / 20),
  },
}));

const tried = [
  { name: "one fan", result: fanResult, reason: "" },
  { name: "2 fans", result: { ...fanResult, airFlow: 0.5, pressure: 85 }, reason: "" },
  { name: "3 fans", result: null, reason: "The curve ends too early." },
];
const speeds = [0.5, 0.75, 1].map((speed) => ({
  name: "",
  reason: "",
  speed,
  result: { ...fanResult, airFlow: 0.45 * speed, power: 118 * speed ** 3 },
}));
const running = fanByMonth({
  ...storeResult.year,
  fanShare: storeResult.year.fanPower.map((_, hour) =>
    hour % 24 < 8 ? 1 : hour % 24 < 12 ? -0.5 : 0
  ),
});

const FIGURES: Readonly<Record<string, readonly [() => DisplayItem, readonly string[]]>> = {
  along: [() => tubes.alongChart(along), ["degC", "W/m", "latent"]],
  condensate: [() => tubes.condensateChart(storeResult), ["litres", "Jul"]],
  search: [() => tubes.searchChart(search), ["kWh a day", "this study", "cost"]],
  layouts: [() => headers.layoutChart(layouts, tubesResult), ["mean, –", "opposite ends"]],
  workmanship: [() => headers.workmanshipChart(ways), ["burrs on half", "constant fan pressure"]],
  counts: [() => fan.countChart(tried), ["Pa", "m³/s", "2 fans"]],
  speeds: [() => fan.speedChart(speeds, 0.85), ["electric power, W", "this study"]],
  months: [() => fan.monthsChart(running), ["kWh", "heat discharged"]],
};

function svgOf(item: DisplayItem): string {
  const found = /src="data:image\/svg\+xml;base64,([^"]+)"/.exec(item["text/html"]);
  assert(found !== null, "no embedded picture");
  return new TextDecoder().decode(Uint8Array.from(atob(found[1]!), (c) => c.charCodeAt(0)));
}

for (const [name, [draw, words]] of Object.entries(FIGURES)) {
  Deno.test(`${name} has axis units, alt text, white ground and no broken number`, () => {
    // Property: what every picture must have
    const item = draw();
    const svg = svgOf(item);
    assertMatch(svg, /^<svg xmlns="http:\/\/www.w3.org\/2000\/svg"/);
    assert(svg.includes('fill="white"'));
    assert(!/NaN|undefined|Infinity/.test(svg), "broken number in the picture");
    assert(!/NaN|undefined|Infinity/.test(item["text/html"]), "broken number in the words");
    for (const word of words) assert(svg.includes(word), `no "${word}" in the picture`);
    const alt = /<img alt="([^"]+)"/.exec(item["text/html"]);
    assert(alt !== null && alt[1]!.length > 30, "alt text missing or too short");
  });
}

Deno.test("fieldSearchChart() says why where no field keeps to the limits", () => {
  // Property: a clear answer, not an empty picture
  const item = tubes.searchChart({ ...search, front: [], allowed: 0, costClasses: null });
  assertMatch(item["text/plain"], /No design meets the limits: air too fast \(9\)/);
});

Deno.test("fanCountChart() tells why a trial has no point", () => {
  // Property: the sentence of the fan chapter stands under the picture
  assertMatch(fan.countChart(tried)["text/html"], /3 fans: The curve ends too early\./);
});

Deno.test("fanChart() draws the field with a dirty filter only where a filter is counted", () => {
  // Property: one more line with a filter than without
  const lines = (filterPressure: number) => {
    const inputs = { ...fanInputs, filterPressure };
    return svgOf(fan.curveChart(summariseFan(inputs, fanResult), inputs)).match(/<path/g)!.length;
  };
  assert(lines(8) > lines(0));
});
