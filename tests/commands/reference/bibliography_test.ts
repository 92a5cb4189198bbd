import { assertEquals, assertMatch, assertThrows } from "@std/assert";
import {
  bibliographyFaults,
  citations,
  citedKeys,
  linkCitations,
  readBibliography,
  uncitedNames,
  unnamedSources,
} from "winterground/commands/reference/bibliography.ts";
import { InputError } from "winterground/basics/mod.ts";

const HEAD = "key,authors,year,title,container,locator,doi,number,note\n";
const ROW = (key: string) => `${key},A. Author,1999,Title,Journal,1,10.1/1,,read\n`;

Deno.test("citedKeys() finds keys with a year or web, each once, and nothing else in brackets", () => {
  // Property: indices, links, hashes and checkboxes are no citations
  const text =
    "A [carslaw-jaeger-1959] §2.6, [pvgis-web], again [carslaw-jaeger-1959]; values[i - 1]," +
    " list[year - 2003], [a link](x.md), [ ], [key], [Capital-2001], [lu-2007a]";
  assertEquals(citedKeys(text), ["carslaw-jaeger-1959", "pvgis-web", "lu-2007a"]);
});

Deno.test("linkCitations() leads to the entry of the source", () => {
  // Property: the key stays visible
  assertEquals(linkCitations("by [yen-1981]."), "by [yen-1981](sources.md#yen-1981).");
});

Deno.test("readBibliography() keeps empty cells and the line, and refuses a missing column", () => {
  // Property: a DOI that is not known stays empty
  const [first] = readBibliography(`${HEAD}yen-1981,Y. Yen,1981,T,C,,,Report 1,seen\n`);
  assertEquals([first!.key, first!.doi, first!.number, first!.line], [
    "yen-1981",
    "",
    "Report 1",
    2,
  ]);
  const error = assertThrows(() => readBibliography("key,authors\na-2000,b\n"), InputError);
  assertMatch(error.message, /year/);
});

Deno.test("bibliographyFaults() names what is cited and not listed, listed and not cited, twice, misspelt", () => {
  // Property: one fault each, with file and line where there is one
  const sources = readBibliography(
    HEAD + ROW("good-1999") + ROW("lonely-2001") + ROW("good-1999") + ROW("Wrong 2002"),
  );
  const cited = citations([
    { path: "lib/a.ts", text: "/** Source: [good-1999]. */" },
    { path: "docs/b.md", text: "after [absent-2003]" },
  ]);
  const faults = bibliographyFaults(sources, cited);
  assertEquals(faults.length, 4);
  assertMatch(faults[0]!, /sources\.csv:3: nothing cites \[lonely-2001\]/);
  assertMatch(faults[1]!, /sources\.csv:4: "good-1999" is listed in line 2 already/);
  assertMatch(faults[2]!, /sources\.csv:5: "Wrong 2002" is not a key/);
  assertMatch(faults[3]!, /docs\/b\.md: \[absent-2003\] is not in/);
});

Deno.test("unnamedSources() asks a doc comment with a source for a key or an honest word", () => {
  // Property: key, memory and exactness pass; a bare name does not, even over two lines
  const comment = (text: string) => ({ path: "lib/a.ts", text: `/**\n * Sum.\n *\n${text}\n */` });
  assertEquals(unnamedSources(comment(" * Source: Yen 1981 [yen-1981].")), []);
  assertEquals(unnamedSources(comment(" * Source: a book, second\n * edition (from memory).")), []);
  assertEquals(unnamedSources(comment(" * Source: exact.")), []);
  const [fault] = unnamedSources(comment(" * Source: a book, second\n * edition.\n * @param a x"));
  assertMatch(fault!, /^lib\/a\.ts:4: "Source: a book, second/);
});

Deno.test("uncitedNames() finds authors with a year in comments, rows and pages that cite no key", () => {
  // Property: a key anywhere in the passage is enough; dates and code are no names
  const code = "/** After Yen 1981. */\nconst a = 1;\n/** After Yen 1981 [yen-1981]. */\n" +
    "// 17 October 2003, March 1993\n// by Hay &\n// Davies 1980\nlet Result = 2001;\n";
  const faults = uncitedNames({ path: "lib/a.ts", text: code });
  assertEquals(faults.map((fault) => fault.split(":")[1]), ["1", "4"]);
  assertMatch(faults[1]!, /"Hay & Davies 1980"/);
  const table = "id,source\na,Moody 1944 tubing\nb,Moody 1944 [moody-1944]\n";
  assertMatch(
    uncitedNames({ path: "data/a.csv", text: table }).join(),
    /^data\/a\.csv:2: "Moody 1944"/,
  );
  assertEquals(uncitedNames({ path: "docs/a.md", text: "Lu et al. 2007 and [lu-2007]\n" }), []);
});
