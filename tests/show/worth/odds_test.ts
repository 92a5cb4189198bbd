import { assert, assertMatch } from "@std/assert";
import * as worth from "winterground/worth";
import { winterOdds } from "../../../lib/worth/mod.ts";
import { checkFigures } from "../figure_rules.ts";
import { madeWinters } from "./winters_sample.ts";

const facts = {
  spread: "usual rule" as const,
  normalsOfOneYear: false,
  cropValue: 2000,
  currency: "crowns",
  year: { withStore: -5, without: -9 },
};
const odds = winterOdds(madeWinters(200), facts);

checkFigures({
  coldest: [() => worth.coldestHourOdds(odds), ["share of winters", "coldest hour", "without"]],
  killing: [() => worth.killingHoursOdds(odds), ["killing limit", "with the store"]],
});

Deno.test("tables and words of the odds name both ways, the band and what it leaves out", () => {
  // Property: a reader finds chance, rare winters and what they rest on
  assertMatch(worth.limitsTable(odds)["text/plain"], /plants die/);
  assertMatch(worth.rareTable(odds)["text/plain"], /sampling only/);
  const words = worth.oddsWords(odds)["text/plain"];
  assertMatch(words, /usual rule/);
  assertMatch(words, /crowns with the store/);
  assertMatch(
    worth.oddsWords(winterOdds(madeWinters(200), { ...facts, cropValue: null }))[
      "text/plain"
    ],
    /no value of the crop/,
  );
});

Deno.test("without winters a sentence stands where the odds would be", () => {
  // Property: the key that turns them on is named
  for (
    const item of [
      worth.coldestHourOdds(null),
      worth.killingHoursOdds(null),
      worth.oddsWords(null),
      worth.limitsTable(null),
      worth.rareTable(null),
    ]
  ) {
    assertMatch(item["text/plain"], /[Nn]o winters are counted/);
    assert(!item["text/html"].includes("<img"));
  }
});
