import {
  assert,
  assertEquals,
  assertMatch,
  assertRejects,
  assertStringIncludes,
} from "@std/assert";
import { InputError } from "winterground/basics/mod.ts";
import * as report from "winterground/report";
import { startRun } from "winterground/study/mod.ts";
import { readIn, shown } from "winterground/show/kit/reader.ts";
import { heatDemandChart } from "winterground/house";
import { firstStepsChart } from "winterground/study";
import { contractorPack } from "winterground/commands/contractor_pack.ts";
import { inReadersOrder } from "winterground/show/kit/reader.ts";
import { CAUTIONS } from "winterground/show/kit/caution.ts";
import type { DisplayItem } from "winterground/show/kit/figure.ts";
import { showSi, showUs } from "winterground/units/mod.ts";
import { openSmallStudy } from "../../harness/small_study.ts";
import { svgOf } from "../figure_rules.ts";
import { steps } from "../store/sample.ts";
import { ladder } from "../worth/sample.ts";
import { siAlone } from "./si_alone.ts";

const study = await openSmallStudy((text) => `study: {units: US}\n${text}`);
const run = startRun(study, { cacheFolder: null });
const results = await run.results();
const [figures, notices] = [await run.figures(), await run.notices()];

/** Every piece of the report, in its order. */
function pieces(): readonly DisplayItem[] {
  return [
    report.verdict(results),
    report.keyFigures(results, figures),
    report.decidingPicture(results),
    report.faultsToMend(results.worth, notices, ladder),
    report.goal(study),
    report.siteTable(study, results),
    report.siteChart(results),
    report.soilTable(study, results, figures),
    report.soilChart(results),
    report.houseTable(results),
    report.houseChart(results),
    report.designTable(study, results),
    report.control(study),
    report.drawing("plan", study, results),
    report.drawing("section", study, results),
    report.drawing("long-section", study, results),
    report.flowTable(results),
    report.flowChart(results),
    report.fanTable(results),
    report.fanChart(results, study),
    report.withWithout(results),
    report.storeTable(results),
    report.coldHours(results),
    report.heatByMonth(results),
    report.oddsTable(null),
    report.oddsChart(null),
    report.oddsText(null),
    report.moneyTable(results.worth),
    report.ladder(ladder),
    report.ladderTable(ladder),
    report.doubtPicture(results.worth),
    ...report.doubtText(results),
    report.runNotices(notices),
    report.hazards(),
    report.openItems(),
    report.assumptions(study),
  ];
}

function inUs<T>(work: () => T): T {
  readIn("US");
  try {
    return work();
  } finally {
    readIn("SI");
  }
}

Deno.test("a study says whose units come first, and no others than SI or US", async () => {
  // Property: the choice is read; a third is refused with both named
  assertEquals(study.heading.units, "US");
  assertEquals((await openSmallStudy()).heading.units, "SI");
  const error = await assertRejects(
    () => openSmallStudy((text) => `study: {units: feet}\n${text}`),
    InputError,
  );
  assertMatch(error.message, /units.*SI.*US/s);
});

Deno.test("every piece of the report is there, whole, and in the reader's units alone where it is a table", () => {
  // Property: no broken number; no unit of the other system in heads and cells
  for (
    const [draw, foreign] of [[pieces, /deg\s?F|cfm|\bft\b/], [
      () => inUs(pieces),
      /deg\s?C|m³/,
    ]] as const
  ) {
    for (const item of draw()) {
      const html = item["text/html"].replaceAll(/base64,[^"]+/g, "");
      assert(!/NaN|undefined|Infinity|\bnull\b/.test(html), html.slice(0, 300));
      assert(item["text/plain"].length > 20, item["text/plain"]);
      const table = /<table class="data">.*?<\/table>/s.exec(
        html.replace(/<details>.*<\/details>/s, ""),
      );
      if (table === null || /the study file left open|to what it does/.test(html)) continue;
      const cells = [...table[0].matchAll(/<t[hd][^>]*>([^<]*)</g)].map(([, text]) => text!);
      for (const cell of cells) {
        if (foreign.test(cell)) assert(/\(/.test(cell) || cell.length > 40, `${cell} in ${html}`);
      }
    }
  }
});

Deno.test("a reader of US units meets no value of SI first or alone, in the report, its pictures and the contractor's pack", async () => {
  // Property: every value in SI stands in brackets behind its own in US units; makers' names aside
  const electricity = shown(results.store.backupFanEnergy, "electricity").replace("\u00a0", " ");
  const names = [results.tubes.product.name, results.fan.curve.name, electricity];
  readIn("US");
  try {
    const page = pieces().map((item) => inReadersOrder(item["text/html"]));
    assertEquals(page.flatMap((html) => siAlone(html, names)), []);
    assertEquals(siAlone(await contractorPack(run), names), []);
  } finally {
    readIn("SI");
  }
  assert(siAlone("<p>0.18 m (0.58 ft) of soil</p>", []).length === 1);
  assert(siAlone("<p>0.58 ft (0.18 m) of soil</p>", []).length === 0);
  assert(
    pieces().flatMap((item) => siAlone(item, [])).length > 100,
    "SI is not seen where it leads",
  );
});

Deno.test("numbers at the bars are in the units of their axis, for a reader of US units too", () => {
  // Property: the largest bar's number is its value in kBtu, 3.412142 for a kilowatt-hour (NIST SP 811)

  const [most, heat] = [
    Math.max(...results.house.heatDemandByMonth),
    Math.max(...steps.map(({ saved }) => saved)),
  ];
  for (
    const [draw, value, axis] of [
      [() => heatDemandChart(results.house), most, "heat demand, kBtu"],
      [() => firstStepsChart(steps), heat, "heating saved at the set point, kBtu a year"],
    ] as const
  ) {
    const words = [...svgOf(inUs(draw)).matchAll(/<text[^>]*>([^<]*)/g)].map(([, text]) => text!);
    assert(words.some((text) => text.includes(axis)), words.join("\n"));
    const wanted = (value * 3.412142).toFixed(0).replace(/^(\d\d)(\d{3})$/, "$1\u202f$2");
    assert(words.includes(wanted), `${wanted} is not among ${words.join(", ")}`);
  }
});

Deno.test("pictures of the report fit half a page and a phone with letters of 9 px", () => {
  // Property: 12 px letters at the width of a picture on a phone of 390 px, 358 px left to it
  const charts = [
    report.siteChart(results),
    report.soilChart(results),
    report.houseChart(results),
    report.flowChart(results),
    report.fanChart(results, study),
    report.coldHours(results),
    report.heatByMonth(results),
    report.ladder(ladder),
  ];
  for (const item of charts) {
    const width = Number(/^<svg [^>]*?width="(\d+)"/.exec(svgOf(item))![1]);
    assert(12 * 358 / width >= 9, `${width} px: ${item["text/plain"].slice(0, 60)}`);
  }
});

Deno.test("the first page says the same numbers as the chapters, with and without the store", () => {
  // Property: one number for one thing
  const { store, worth } = results;
  const words = report.verdict(results)["text/plain"];
  assert(words.toLowerCase().startsWith(worth.verdict.word));
  for (const value of [store.coldestHour, store.coldestHourNoFan]) {
    assertStringIncludes(words, showSi(value, "temperature"));
    assertStringIncludes(
      inUs(() => report.verdict(results))["text/plain"],
      showUs(value, "temperature"),
    );
  }
  assertStringIncludes(words, shown(store.savedHeat, "energy"));
  assertStringIncludes(report.storeTable(results)["text/plain"], shown(store.savedHeat, "energy"));
  const rows = report.keyFigures(results, figures)["text/html"].match(/<tr>/g)!.length - 1;
  assertEquals(rows, 5);
});

Deno.test("what to mend first: faults of the design, then warnings, then cautions, at most three", () => {
  // Property: the order of gravity; sensors last
  const given = (level: "warning" | "caution", chapter: "measured" | "store", text: string) =>
    ({ level, chapter, text }) as const;
  const list = [
    given("caution", "store", "a caution"),
    given("warning", "measured", "a sensor"),
    given("warning", "store", "a warning"),
  ];
  const told = (reason: "pays" | "faults") =>
    report.faultsToMend(
      { ...results.worth, verdict: { ...results.worth.verdict, reason, first: ["no curtain"] } },
      list,
      null,
    )["text/plain"].split("\n").slice(1);
  assertEquals(told("faults"), ["1. No curtain.", "2. a warning", "3. a caution"]);
  assertEquals(told("pays"), ["1. a warning", "2. a caution", "3. a sensor"]);
});

Deno.test("every hazard is left to each of the people its caution names", () => {
  // Property: nothing is lost between the list of cautions and the list of people
  const items = report.openItemList();
  for (const { hazard, deferTo } of CAUTIONS) {
    for (const who of deferTo.split(";").map((one) => one.trim())) {
      assert(items.find((item) => item.who === who)?.what.includes(hazard), `${who}: ${hazard}`);
    }
  }
  const shownText = report.openItems()["text/plain"];
  for (const { who } of items) assertStringIncludes(shownText, who);
});
