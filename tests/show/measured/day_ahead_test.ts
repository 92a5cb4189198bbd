// Property: the coming days are shown with times, band and warnings; without a forecast it says why.
import { assertMatch, assertStringIncludes } from "@std/assert";
import * as measured from "winterground/measured";
import { checkFigures } from "../figure_rules.ts";

const COUNT = 48;
const series = (at: (k: number) => number) => Float64Array.from({ length: COUNT }, (_, k) => at(k));
const course = (fan: boolean, heater: boolean): measured.AheadCourse => ({
  fan,
  heater,
  air: series((k) => 3 - k / 10),
  heaterPower: series(() => heater ? 1000 : 0),
  heat: series(() => 500),
  fanPower: series(() => 100),
  coldestHour: -1.7,
  heaterEnergy: heater ? 48 : 0,
  fanEnergy: 4.8,
});
const warning = (fan: boolean): measured.FrostWarning => ({
  name: "frost in the house",
  limit: 0,
  fan,
  heater: false,
  possible: 20,
  likely: 31,
  nearlyCertain: null,
});
const tomorrow: measured.Tomorrow = {
  reason: null,
  ahead: {
    start: 720,
    hours: COUNT,
    outdoors: series(() => -20),
    courses: [course(true, false), course(true, true), course(false, false), course(false, true)],
    warnings: [warning(true), warning(false)],
    charging: [{ from: 12, to: 15, heat: 30, fanEnergy: 1, ratio: 30 }],
    band: { low: -1, high: 0.8 },
    store: 9,
    storeGap: -0.4,
  },
  hours: Array.from({ length: COUNT }, (_, k) => ({
    time: new Date(Date.UTC(2026, 0, 31, k)).toISOString().slice(0, 16).replace("T", " "),
    outdoors: -20,
    inside: 3 - k / 10,
    low: 2 - k / 10,
    high: 3.8 - k / 10,
    withoutFan: 1 - k / 10,
    heated: 4,
    stored: 0.5,
  })),
  remarks: ["No wind in the forecast: 3 m/s taken."],
  pastHours: 1440,
  heaterPower: 0,
};
const none: measured.Tomorrow = {
  ...tomorrow,
  reason: "the study names no forecast",
  ahead: null,
  hours: [],
};
const plain = (item: { readonly "text/plain": string }) =>
  item["text/plain"].replaceAll(/[\u00a0\u202f]/g, " ");

checkFigures({
  ahead: [() => measured.aheadChart(tomorrow), ["degC", "fan off", "outdoors"]],
});

Deno.test("frost warning, charging and heater are told by the hour", () => {
  const frost = plain(measured.frostTable(tomorrow));
  assertMatch(frost, /fan as set, no heater\s+2026-01-31 20:00\s+2026-02-01 07:00\s+not within/);
  assertMatch(plain(measured.chargingTable(tomorrow)), /2026-01-31 12:00\s+2026-01-31 15:00\s+30/);
  const words = plain(measured.aheadWords(tomorrow));
  assertMatch(words, /48 kWh.*fan as set.*48 kWh.*fan off/);
  assertStringIncludes(words, "No wind in the forecast");
  assertMatch(words, /−0\.4 K.*off the probes/);
});

Deno.test("without a forecast every item says why", () => {
  for (
    const item of [
      measured.aheadChart(none),
      measured.frostTable(none),
      measured.chargingTable(none),
      measured.aheadWords(none),
    ]
  ) {
    assertStringIncludes(plain(item), "the study names no forecast");
  }
});
