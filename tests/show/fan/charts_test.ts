import { assert, assertMatch } from "@std/assert";
import * as fan from "winterground/fan";
import { summariseFan } from "../../../lib/fan/mod.ts";
import { fanByMonth, solarFan } from "../../../lib/store/mod.ts";
import { checkFigures, svgOf } from "../figure_rules.ts";
import { fanInputs, fanResult } from "./sample.ts";
import { climateYear } from "../climate/sample.ts";
import { storeResult } from "../store/sample.ts";

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

checkFigures({
  fan: [() => fan.curveChart(fanResult, fanInputs), ["Pa", "m³/s"]],
  counts: [() => fan.countChart(tried), ["Pa", "m³/s", "2 fans"]],
  speeds: [() => fan.speedChart(speeds, 0.85), ["electric power, W", "this study"]],
  solar: [
    () => fan.solarFanChart(solarFan({ climate: climateYear, year: storeResult.year })),
    ["electricity, kWh", "panel of"],
  ],
  months: [() => fan.monthsChart(running), ["kWh", "heat discharged"]],
});

Deno.test("numbers written into a picture keep their digits", () => {
  // Property: shortening coordinates leaves the words alone
  const svg = svgOf(fan.curveChart({ ...fanResult, airFlow: 0.4567 }, fanInputs));
  assert(svg.includes("0.457&#160;m³/s"), "the flow at the operating point");
  assert(!/="[^"]*\d\.\d{3}/.test(svg.replace(/font-size="[^"]*"/g, "")), "long coordinate");
});

Deno.test("countChart() tells why a trial has no point", () => {
  // Property: the sentence of the fan chapter stands under the picture
  assertMatch(fan.countChart(tried)["text/html"], /3 fans: The curve ends too early\./);
});

Deno.test("curveChart() draws the field with a dirty filter only where a filter is counted", () => {
  // Property: one more line with a filter than without
  const lines = (filterPressure: number) => {
    const inputs = { ...fanInputs, filterPressure };
    return svgOf(fan.curveChart(summariseFan(inputs, fanResult), inputs)).match(/<path/g)!.length;
  };
  assert(lines(8) > lines(0));
});
