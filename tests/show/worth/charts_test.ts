import { assert, assertMatch } from "@std/assert";
import * as worth from "winterground/worth";
import { checkFigures } from "../figure_rules.ts";
import { worthResult } from "./sample.ts";

checkFigures({
  balance: [() => worth.balanceChart(worthResult), ["years from today", "crowns"]],
  doubt: [() => worth.doubtChart(worthResult), ["%", "price of fuel", "first cost"]],
  alternatives: [() => worth.alternativesChart(worthResult), ["crowns", "sealing", "heat store"]],
});

Deno.test("without prices a sentence stands where the picture would be", () => {
  // Property: the missing price is named
  const open = {
    ...worthResult,
    earnings: null,
    heatPrice: null,
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
