import { assertEquals, assertStringIncludes } from "@std/assert";
import MiniSearch from "minisearch";
import { outlinePage } from "winterground/press/site/outline.ts";
import { foldTerm, searchIndex } from "winterground/press/site/search.ts";
import { textPage } from "./tiny_site.ts";

const PAGES = [
  textPage(
    "soil",
    "# Soil\n\nAbout ground.\n\n## Frost\n\nAfter Côté the ground freezes.\n\n$$ x = y $$",
  ),
  textPage("fan", "# Fan\n\nA fan moves air."),
].map(outlinePage);

function find(words: string): string[] {
  const index = MiniSearch.loadJSON(searchIndex(PAGES), {
    fields: ["heading", "page", "text"],
    storeFields: ["link", "heading", "page", "start"],
    processTerm: foldTerm,
  });
  return index.search(words, { prefix: true, combineWith: "AND" }).map(({ link }) => link);
}

Deno.test("searchIndex() finds the heading under which words stand, accents or not", () => {
  // Property: words that stand in one place, in two, nowhere
  assertEquals(find("cote"), ["soil.html#frost"]);
  assertEquals(find("CÔTÉ freez"), ["soil.html#frost"]);
  assertEquals(find("moves air"), ["fan.html"]);
  assertEquals(find("ground").toSorted(), ["soil.html", "soil.html#frost"]);
  assertEquals(find("glacier"), []);
});

Deno.test("searchIndex() is the same for the same pages", () => {
  // Property: bytes
  assertEquals(searchIndex(PAGES), searchIndex(PAGES));
  assertStringIncludes(searchIndex(PAGES), "After Côté the ground freezes.");
});
