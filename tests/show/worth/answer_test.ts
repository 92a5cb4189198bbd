import { assert, assertStringIncludes } from "@std/assert";
import * as worth from "winterground/worth";
import type { VerdictGiven } from "../../../lib/worth/mod.ts";
import { storeResult } from "../store/sample.ts";
import { worthResult } from "./sample.ts";

const text = (item: { readonly "text/plain": string }) =>
  item["text/plain"].replaceAll(/[\u00a0\u202f]/g, " ");
const card = (verdict: VerdictGiven, changes = {}) =>
  text(worth.answer({ ...worthResult, ...changes, verdict }, storeResult));

Deno.test("answer() opens with the verdict and its reason", () => {
  // Property: light and words follow the verdict
  const cases: readonly (readonly [VerdictGiven, string, string])[] = [
    [{ word: "dig", reason: "pays", first: [] }, "[yes]", "Dig:"],
    [{ word: "no", reason: "saves no heat", first: [] }, "[no]", "saves no heat"],
    [
      { word: "not yet", reason: "faults", first: ["the fan stalls"] },
      "[partly]",
      "the fan stalls",
    ],
    [
      { word: "not yet", reason: "another measure comes first", first: ["sealing"] },
      "[partly]",
      "sealing",
    ],
    [
      { word: "no", reason: "a heater alone costs less", first: [] },
      "[no]",
      "a heater on propane alone",
    ],
  ];
  for (const [verdict, light, words] of cases) {
    const shown = card(verdict);
    assert(shown.startsWith(light), shown);
    assertStringIncludes(shown, words);
  }
});

Deno.test("answer() tells a house without prices what is missing and shows no money", () => {
  // Property: no currency where nothing is priced
  const shown = card(
    { word: "not yet", reason: "prices missing", first: ["electricity"] },
    { earnings: null, doubt: null, currency: null },
  );
  assertStringIncludes(shown, "no price for electricity");
  assert(!shown.includes("crowns"));
});

Deno.test("costsTable() shows a dash for what has no price", () => {
  // Property: a missing price is not nought
  const shown = text(worth.costsTable(worthResult));
  assertStringIncludes(shown, "excavation");
  assertStringIncludes(shown, "–");
});

Deno.test("moneyTable() and fuelWords() state amounts with their currency and unit", () => {
  // Property: values of the sample
  const shown = text(worth.moneyTable(worthResult));
  assertStringIncludes(shown, "1500 crowns");
  assertStringIncludes(shown, "13.3 years");
  assertStringIncludes(text(worth.fuelWords(worthResult)), "600 L of propane");
});

Deno.test("doubtWords() states the bands and what to find out first", () => {
  // Property: values of the sample
  const shown = text(worth.doubtWords(worthResult));
  assertStringIncludes(shown, "−900 crowns and 4000 crowns");
  assertStringIncludes(shown, "Find out first: price of fuel.");
});
