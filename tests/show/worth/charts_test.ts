import { assert, assertMatch } from "@std/assert";
import * as worth from "winterground/worth";
import { checkFigures } from "../figure_rules.ts";
import { designs, ladder, otherWays, worthResult } from "./sample.ts";

checkFigures({
  balance: [() => worth.balanceChart(worthResult), ["years from today", "crowns"]],
  doubt: [() => worth.doubtChart(worthResult), ["%", "price of fuel", "first cost"]],
  ways: [() => worth.allWaysChart(worthResult, otherWays), [
    "crowns",
    "sealing",
    "heater: propane",
  ]],
  ladder: [() => worth.ladderChart(ladder), ["crowns", "sealing", "heat store", "as it is"]],
  designs: [() => worth.designChart(designs), ["crowns", "this study", "kWh a year", "h a year"]],
  alternatives: [() => worth.alternativesChart(worthResult), ["crowns", "sealing", "heat store"]],
});

Deno.test("without prices a sentence stands where the picture would be", () => {
  // Property: the missing price is named
  const open = {
    ...worthResult,
    earnings: null,
    heatWorth: null,
    doubt: null,
    missing: ["electricity"],
  };
  for (
    const item of [
      worth.balanceChart(open),
      worth.alternativesChart(open),
      worth.doubtChart(open),
      worth.doubtWords(open),
    ]
  ) {
    assertMatch(item["text/plain"], /no price for electricity/);
    assert(!item["text/html"].includes("<img"));
  }
});

Deno.test("ladderWords() names the steps in order, their sum, and what is left with its reason", () => {
  // Property: values of the sample
  const words = worth.ladderWords(ladder)["text/plain"].replaceAll(/[\u00a0\u202f]/g, " ");
  assertMatch(words, /sealing, then heat store\. Together they cost 6800 crowns/);
  assertMatch(
    words,
    /water barrels \(no price\), one more layer of glazing \(0\.310? crowns\/kWh\)/,
  );
  assertMatch(worth.ladderWords({ ...ladder, rungs: [] })["text/plain"], /No step pays/);
});

Deno.test("without a price of heat a sentence stands where the ladder would be", () => {
  // Property: the reason is named
  for (const item of [worth.ladderChart(null), worth.ladderWords(null)]) {
    assertMatch(item["text/plain"], /no price/);
    assert(!item["text/html"].includes("<img"));
  }
});

Deno.test("allWaysChart() tells in its table which price is missing", () => {
  // Property: what has no price is said
  assertMatch(worth.allWaysChart(worthResult, otherWays)["text/plain"], /no price for fuel:wood/);
});

Deno.test("designWords() says what the own design gives up, and that none pays where none does", () => {
  // Property: values of the sample
  const words = worth.designWords(designs)["text/plain"].replaceAll(/[\u00a0\u202f]/g, " ");
  assertMatch(words, /1 ?234 designs were judged .* and 3 taken/);
  assertMatch(words, /gives up 500 kWh .*more heat .*; 500 crowns for as much heat/);
  assertMatch(words, /None of them pays .* loses least, 200 crowns/);
  const pays = { ...designs, best: { ...designs.best!, netSavings: 300 } };
  assertMatch(worth.designWords(pays)["text/plain"], /greatest net savings .*300/);
});

Deno.test("designChart() names in its note what was refused, the commonest first", () => {
  // Property: values of the sample
  assertMatch(
    worth.designChart(designs)["text/plain"],
    /a tube gets too little air \(60\), pit too deep \(40\)/,
  );
});

Deno.test("without a search a sentence says how to ask for one", () => {
  // Property: the key is named
  for (const item of [worth.designChart(null), worth.designWords(null)]) {
    assertMatch(item["text/plain"], /search: yes/);
    assert(!item["text/html"].includes("<img"));
  }
});
