import { assert, assertMatch, assertStringIncludes } from "@std/assert";
import * as worth from "winterground/worth";
import type { Figures } from "../../../lib/basics/mod.ts";
import { type HouseWinter, type VerdictGiven, winterOdds } from "../../../lib/worth/mod.ts";
import { oddsFigures } from "../../../lib/worth/odds/figures.ts";
import { madeHouseWinter } from "../../support/made_winter.ts";
import { storeResult } from "../store/sample.ts";
import { worthResult } from "./sample.ts";

const text = (item: { readonly "text/plain": string }) =>
  item["text/plain"].replaceAll(/[\u00a0\u202f]/g, " ");
const card = (verdict: VerdictGiven, changes = {}) =>
  text(worth.answer({ ...worthResult, ...changes, verdict }, storeResult, {}));

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

/** Made winters of which so many have a killing hour with the store; all have one without. */
const figuresOf = (count: number, killed: number, limit = -9) =>
  Object.fromEntries(oddsFigures(winterOdds(
    Array.from({ length: count }, (_, winter) => ({
      winter,
      coldestOutdoors: -30,
      withStore: limited(madeHouseWinter(winter, 0, winter < killed ? 5 : 0), limit),
      without: limited(madeHouseWinter(winter, 4, 50), limit),
    })),
    {
      spread: "usual rule",
      normalsOfOneYear: false,
      cropValue: null,
      currency: null,
      year: { withStore: -5, without: -9 },
    },
  )));
const limited = (house: HouseWinter, limit: number): HouseWinter => ({
  ...house,
  crop: { ...house.crop, killing: { ...house.crop.killing, limit } },
});
const line = (figures: Figures) => worth.oddsLine(figures).replaceAll(/[\u00a0\u202f]/g, " ");

Deno.test("the odds line says how to get the odds until they are counted, and then both chances with bands", () => {
  // Property: borders of what is known
  assertStringIncludes(line({}), "notebook 08");
  const open = Object.fromEntries(
    oddsFigures(undefined).map(([key, figure]) => [key, { ...figure, provisional: true as const }]),
  );
  assertStringIncludes(line(open), "notebook 08");
  assertStringIncludes(line(Object.fromEntries(oddsFigures(null))), "no winters are counted");
  const known = line(figuresOf(100, 25));
  assertMatch(known, /plants die comes in 25 % \(18 % to 34 %\) of winters with the store/);
  assertMatch(known, /100 % \(9\d % to 100 %\) without/);
  assertMatch(
    known,
    /coldest hour in ten years is .* degC .*\(.* to .*\) with the store, .* without/,
  );
  assertStringIncludes(known, "sampling only");
});

Deno.test("the odds line states no coldest hour in ten years from 49 winters, and does from 50", () => {
  // Property: five winters behind a value of one in ten; a chance is stated from any number
  assertStringIncludes(line(figuresOf(49, 5)), "too few winters");
  assertStringIncludes(line(figuresOf(49, 5)), "plants die comes in 10 %");
  assert(!line(figuresOf(50, 5)).includes("too few"));
});

Deno.test("a winter without a killing hour is no chance, and empty beds have none at all", () => {
  // Property: borders of the chance
  assertMatch(line(figuresOf(100, 0)), /comes in 0 % \(0 % to 4 %\) of winters with the store/);
  assertStringIncludes(line(figuresOf(100, 0, -50)), "no crop is named");
});

Deno.test("the card carries the odds line", () => {
  // Property: one wording everywhere
  const shown = worth.answer(worthResult, storeResult, figuresOf(100, 25))["text/plain"];
  assertStringIncludes(shown, `Odds: ${worth.oddsLine(figuresOf(100, 25))}`);
});
