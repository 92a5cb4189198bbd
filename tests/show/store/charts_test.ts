import { assert, assertEquals } from "@std/assert";
import * as store from "winterground/store";
import { cellLimits } from "../../../lib/show/kit/cell_limits.ts";
import { checkFigures, svgOf } from "../figure_rules.ts";
import { climateYear } from "../climate/sample.ts";
import { DEFAULTS } from "../../harness/defaults.ts";
import { tubesResult } from "../tubes/sample.ts";
import { beds, cut, ranking, resolution, storeResult, variants, ways } from "./sample.ts";

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
  measures: [() => store.measuresChart(ranking), ["kWh a year", "sealing", "heat store"]],
  powerCut: [() => store.powerCutChart(cut), ["heater until the cut, degC", "no heater, degC"]],
  resolution: [() => store.resolutionChart(resolution), ["moved against the study, %", "steps"]],
  beds: [() => store.rootZoneChart(beds), ["degC", "deep"]],
  variants: [() => store.variantsChart(variants), ["kWh a year", ", K"]],
});

Deno.test("measuresChart() says so where there is no heat to save, and keeps its axes", () => {
  // Property: warm climates
  const none = { ...ranking[0]!, heatDemand: 0, saved: 0, savedShare: 0 };
  const item = store.measuresChart([none, none]);
  assert(!/0\.0000/.test(svgOf(item)), "axis without a span");
  assert(/[Nn]o heat/.test(item["text/plain"]));
});

Deno.test("measuresTable() keeps the order of the ranking, the house as it is first", () => {
  // Property: order
  const shown = store.measuresTable(ranking)["text/plain"];
  const places = ranking.map(({ name }) => shown.indexOf(name));
  assert(places.every((place, i) => place > 0 && (i === 0 || place > places[i - 1]!)), shown);
});

Deno.test("refinementTable() says what is done and how large the computation is then", () => {
  // Property: rows of a made-up store
  const text = store.refinementTable(resolution)["text/plain"];
  for (const words of ["as it is run", "steps in time half as long", "4000"]) {
    assert(text.includes(words), words);
  }
});

Deno.test("resolutionTable() sets the study first and each movement beside its heat", () => {
  // Property: rows and shares of a made-up store
  const [head, study, ...rows] = store.resolutionTable(resolution)["text/plain"].split("\n").slice(
    1,
  );
  assert(head!.startsWith("finer"));
  assert(study!.startsWith("study"));
  assertEquals(rows.map((row) => row.split(" ")[0]), ["cells", "steps", "slices", "domain"]);
  assert(rows.at(-1)!.includes("0.50\u00a0%"), rows.at(-1));
});

Deno.test("yearChart() draws daily means of every line, the soil's too", () => {
  // Property: what happens within a day does not show
  const { year } = storeResult;
  const within = year.storeTemperature.map((value, hour) => value + (hour % 24 < 12 ? 3 : -3));
  const other = { ...storeResult, year: { ...year, storeTemperature: within } };
  assertEquals(svgOf(store.yearChart(other)), svgOf(store.yearChart(storeResult)));
});

Deno.test("rootZoneWords() says which way the store moves the beds, and names seeds only where some are sown", () => {
  // Property: words of a made-up year
  const words = store.rootZoneWords(beds)["text/plain"].replaceAll("\u00a0", " ");
  assert(words.includes("0.5 K (0.9 degF) warmer"), words);
  assert(words.includes("Seeds of spinach"));
  const colder = beds.depths.map((bed) => ({ ...bed, winterGain: -0.5 }));
  const none = store.rootZoneWords({
    ...beds,
    depths: colder,
    crop: { ...beds.crop, sprouting: null },
  });
  assert(/0\.5\sK \(0\.9\sdegF\) colder/.test(none["text/plain"]), none["text/plain"]);
  assert(!none["text/plain"].includes("Seeds"));
});

Deno.test("earlyYearTable() puts the house that has stood for years before the settled year", () => {
  // Property: order and share
  const standing = {
    year: 1,
    heatIn: 100,
    heatOut: storeResult.heatOut,
    share: 1,
    repeats: false,
    standing: true,
  };
  const rows = store.earlyYearTable(storeResult, standing)["text/plain"].trimEnd().split("\n");
  assert(rows.at(-2)!.includes("stood for years") && rows.at(-2)!.endsWith("100.0"), rows.at(-2));
  assert(rows.at(-1)!.includes("settled year"));
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

Deno.test("powerCutTable() and powerCutWords() give hours, not yet, and never as they are", () => {
  // Property: words of every case; cautions beside them
  const shown = store.powerCutTable(cut)["text/plain"];
  assert(/2\.5 h/.test(shown) && /already below/.test(shown) && /not within 4 days/.test(shown));
  const words = store.powerCutWords(cut)["text/plain"];
  assert(/carbon monoxide/.test(words) && /licensed electrician/.test(words), words);
  const bare = store.powerCutWords({ ...cut, cropLimit: -90 })["text/plain"];
  assert(!/killing/.test(bare), bare);
});

Deno.test("controlTable() tells of seasons and limits only where there are any", () => {
  // Property: one row for each that is set
  const plain = { ...DEFAULTS.store };
  const rows = (inputs: typeof plain) =>
    store.controlTable(inputs)["text/plain"].split("\n").length;
  const set = {
    fanSeason: "1 Sep to 31 May",
    chargeSeason: "15 Aug to 30 Apr",
    chargeBelowGround: 12,
    maximumStore: 25,
  };
  assertEquals(rows({ ...plain, ...set }), rows(plain) + 4);
  assert(/15 Aug to 30 Apr/.test(store.controlTable({ ...plain, ...set })["text/plain"]));
});
