import { assert, assertEquals, assertMatch } from "@std/assert";
import { alone } from "../../lib/basics/mod.ts";
import { measuredChapter, measuredSteps, seasonTask } from "../../lib/measured/compute.ts";
import { measuredFigures } from "../../lib/measured/figures.ts";
import type { MeasuredRequest } from "../../lib/measured/request.ts";
import { measuredResult } from "../show/measured/season_sample.ts";

const none: MeasuredRequest = {
  inputs: {
    logMap: null,
    texts: null,
    truth: null,
    plantedFaults: null,
    forecast: null,
    step: 900,
    holdOut: "never",
    fanOff: "never",
    fanBetweenProbes: true,
  },
  setting: { pressure: 0, timeZone: 0, step: 900, fanHeats: true, fanOff: "never" },
  plan: null,
  body: null,
};

Deno.test("a study without logs has its figures absent, each with the reason, and no notice", () => {
  // Property: nothing is measured, nothing is claimed
  const result = measuredChapter(none);
  const figures = measuredFigures(result);
  assertEquals(figures.map(([key]) => key), [
    "measured.nmbe",
    "measured.cvrmse",
    "measured.heatIn",
    "measured.cop",
  ]);
  for (const [key, { value, label }] of figures) {
    assertEquals(value, null, key);
    assertMatch(label, /names no logs/);
  }
  assertEquals(result.notices, []);
  assertEquals(alone(measuredSteps(none)), result);
});

Deno.test("with a log every figure has a value inside its range", () => {
  // Property: low, value and high in order; the heat is that of the season
  for (const [key, { value, low, high }] of measuredFigures(measuredResult)) {
    assert(typeof value === "number" && low! <= value && value <= high!, key);
  }
  const figures = new Map(measuredFigures(measuredResult));
  const { heatIn, cop } = measuredResult.season!.sums;
  assertEquals(figures.get("measured.heatIn")!.value, heatIn.value);
  assertEquals(figures.get("measured.cop")!.value, cop!.value);
});

const MAP = `
timeZone: UTC
loggers:
  one:
    files: one.csv
    sensors:
      intake: { column: intake, quantity: airTemperature, zone: intake, accuracy: 0.1 K }
      fan: { column: fan, quantity: power, unit: W, zone: fan, accuracy: 1 % }
`;
const rows = Array.from(
  { length: 200 },
  (_, k) =>
    `${new Date(Date.UTC(2025, 10, 1) + 9e5 * k).toISOString().slice(0, 16)},${
      (10 + Math.sin(k / 9)).toFixed(2)
    },${k % 40 < 20 ? 0 : 180}`,
).join("\n");

Deno.test("logs that do not tell the heat give a notice with what is missing", () => {
  // Property: read and said, not refused
  const texts = {
    map: { name: "map.yaml", text: MAP },
    logs: [{ name: "one.csv", text: `time,intake,fan\n${rows}\n` }],
  };
  const series = () => new Float64Array(8760);
  const result = measuredChapter({
    ...none,
    inputs: { ...none.inputs, logMap: "map.yaml", texts },
    plan: {
      heatIn: series(),
      heatOut: series(),
      fanPower: series(),
      running: series(),
      inside: series(),
      store: series(),
      outside: series(),
      airFlow: 1,
    },
    body: { volume: 1, heatCapacity: 1 },
  });
  assertMatch(result.reason!, /no relative humidity at the intake.*no air flow/);
  assertMatch(result.notices[0]!.text, /No heat is worked out/);
  assertEquals(seasonTask.kept, true);
});
