import { assert, assertMatch, assertStringIncludes } from "@std/assert";
import * as measured from "winterground/measured";
import { checkFigures } from "../figure_rules.ts";
import { measuredResult, nothingMeasured } from "./season_sample.ts";

checkFigures({
  heat: [() => measured.heatChart(measuredResult), ["kWh", "put in", "planned"]],
  nights: [() => measured.nightChart(measuredResult), ["degC", "control house", "outdoors"]],
  store: [() => measured.storeChart(measuredResult), ["degC", "between the tubes"]],
});

const plain = (item: { readonly "text/plain": string }) =>
  item["text/plain"].replaceAll(/[\u00a0\u202f]/g, " ");

Deno.test("without logs every picture and table is a sentence that says why", () => {
  // Property: the reason of the chapter, no empty picture
  for (
    const item of [
      measured.answer(nothingMeasured),
      measured.heatChart(nothingMeasured),
      measured.nightChart(nothingMeasured),
      measured.storeChart(nothingMeasured),
      measured.channelsTable(nothingMeasured),
      measured.findingsTable(nothingMeasured),
      measured.sumsTable(nothingMeasured),
      measured.planTable(nothingMeasured),
      measured.agreementTable(nothingMeasured),
      measured.balanceTable(nothingMeasured),
      measured.liftWords(nothingMeasured),
    ]
  ) {
    assertStringIncludes(plain(item), "the study names no logs");
    assert(!item["text/html"].includes("<img"));
  }
});

Deno.test("the answer gives heat, range and lift, and names what was not as planned", () => {
  // Property: values of the sample; the light follows the hours
  const shown = plain(measured.answer(measuredResult));
  assert(shown.startsWith("[no]"), shown);
  assertMatch(shown, /Not as planned: .*air flow while the fan runs/);
  assertMatch(shown, /nights are 3\.0 K warmer/);
  assertMatch(shown, /95 of 100 cases/);
  assert(!/NaN|undefined|Infinity/.test(shown), shown);
});

Deno.test("tables name sensors, faults with local time, ranges and limits", () => {
  // Property: what a reader looks for is there
  assertMatch(plain(measured.channelsTable(measuredResult)), /intake\s/);
  const faults = plain(measured.findingsTable(measuredResult));
  assertMatch(faults, /outdoors\s+2025-11-01 01:00\s+2025-11-01 02:00/);
  assertMatch(plain(measured.sumsTable(measuredResult)), /recovery.*from .* to /);
  assertMatch(plain(measured.planTable(measuredResult)), /air flow.*not as planned/);
  assertMatch(plain(measured.agreementTable(measuredResult)), /10\.0 % and 30\.0 %/);
  assertMatch(plain(measured.balanceTable(measuredResult)), /floor, edges/);
  assertMatch(plain(measured.liftWords(measuredResult)), /control house/);
});
