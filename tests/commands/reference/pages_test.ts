import { assertEquals, assertMatch, assertStringIncludes } from "@std/assert";
import { readBibliography } from "winterground/commands/reference/bibliography.ts";
import {
  functionsPage,
  sourcesPage,
  symbolsPage,
  withSourceLinks,
} from "winterground/commands/reference/pages.ts";
import { publicFunctions } from "winterground/commands/reference/public_functions.ts";
import {
  greekLetters,
  mergeSymbols,
  symbolFaults,
  symbolRows,
} from "winterground/commands/reference/symbols.ts";

const ROOT = "file:///project/";
const DOC = {
  nodes: {
    "file:///project/lib/fan/mod.ts": {
      symbols: [
        {
          name: "speed",
          declarations: [{
            kind: "function",
            location: { filename: `${ROOT}lib/fan/laws.ts`, line: 7 },
            jsDoc: {
              doc: "Speed of the fan, see {@link flow}.\n\nn = Q/V\nfor both.\n\n" +
                "Source: Author 1999 [author-1999]. Valid for: Q > 0.\n",
              tags: [
                { kind: "param", name: "flow", doc: "m³/s, above 0" },
                { kind: "return", doc: "1/s" },
                { kind: "throws", type: "RangeError", doc: "below 0" },
              ],
            },
            def: {
              params: [{ kind: "assign", left: { kind: "identifier", name: "flow" } }, {
                kind: "object",
              }],
            },
          }],
        },
        {
          name: "FanCurve",
          declarations: [{
            kind: "interface",
            location: { filename: `${ROOT}lib/fan/types.ts`, line: 1 },
          }],
        },
      ],
    },
  },
};
const MODULES = publicFunctions(
  DOC,
  new Map([["winterground/fan", "file:///project/lib/fan/mod.ts"]]),
  ROOT,
);

Deno.test("publicFunctions() takes a function's doc comment apart and leaves types out", () => {
  // Property: sentence, formula, source, parameters, result and errors each in their place
  const [only] = MODULES[0]!.functions;
  assertEquals(MODULES[0]!.functions.length, 1);
  assertEquals(only!.file, "lib/fan/laws.ts");
  assertEquals(only!.does, ["Speed of the fan, see `flow`.", "n = Q/V for both."]);
  assertEquals(only!.source, "Author 1999 [author-1999]. Valid for: Q > 0.");
  assertEquals(only!.params[0], { name: "flow", meaning: "m³/s, above 0" });
  assertEquals(only!.throws, ["`RangeError` below 0"]);
});

Deno.test("functionsPage() shows units, source and the tests, those with published values first", () => {
  // Property: every part of the doc comment reaches the page
  const checks = new Map([["lib/fan/laws.ts#speed", [
    { path: "tests/fan/a_test.ts", published: false },
    { path: "tests/outside/b_test.ts", published: true },
  ]]]);
  const page = functionsPage(MODULES, checks);
  for (
    const line of [
      "- [winterground/fan](#wintergroundfan): 1",
      "### speed",
      "- `flow`: m³/s, above 0",
      "- gives 1/s",
      "- throws `RangeError` below 0",
      "- source: Author 1999 [author-1999](sources.md#author-1999). Valid for: Q > 0.",
      "- checked in `tests/outside/b_test.ts` (**published values**), `tests/fan/a_test.ts`",
    ]
  ) assertStringIncludes(page, `${line}\n`);
  assertStringIncludes(functionsPage(MODULES, new Map()), "checked in no test of its own");
});

Deno.test("sourcesPage() leaves out what is not known and counts the DOIs", () => {
  // Property: an empty cell leaves no mark
  const sources = readBibliography(
    "key,authors,year,title,container,locator,doi,number,note\n" +
      'author-1999,A. Author,1999,On fans,Journal,"1, 2",10.1/x<y>2,,read\n' +
      "manual-web,A maker,,,Manual,,,,seen\n",
  );
  const page = sourcesPage(sources, new Map([["author-1999", ["lib/a.ts"]]]));
  assertStringIncludes(page, "2 published sources, 1 with a DOI.");
  assertStringIncludes(
    page,
    "### author-1999\n\nA. Author (1999). _On fans_. Journal, 1, 2. DOI <https://doi.org/10.1/x%3Cy%3E2>.\n",
  );
  assertStringIncludes(page, "Confirmed: read. Cited in `lib/a.ts`.");
  assertStringIncludes(page, "### manual-web\n\nA maker. Manual.\n");
});

Deno.test("withSourceLinks() writes each target once, and twice changes nothing", () => {
  // Property: idempotent; a target whose citation is gone goes too
  const page = "# A\n\nBy [b-2001] and [a-1999], [b-2001].\n";
  const linked = `${page}\n[a-1999]: sources.md#a-1999\n[b-2001]: sources.md#b-2001\n`;
  assertEquals(withSourceLinks(page), linked);
  assertEquals(withSourceLinks(linked), linked);
  assertEquals(
    withSourceLinks(linked.replace("By [b-2001] and ", "").replace(", [b-2001].", ".")),
    "# A\n\n[a-1999].\n\n[a-1999]: sources.md#a-1999\n",
  );
  assertEquals(withSourceLinks("# A\n"), "# A\n");
});

const PAGE = {
  path: "docs/fan.md",
  text: "# Fan\n\nn = Q/V, η = 1.\n\n## Symbols\n\n| symbol | meaning | unit |\n| - | - | - |\n" +
    "| n | speed | 1/s |\n| η | efficiency | 1 |\n\n## Sources\n\n| no | symbol | here |\n",
};

Deno.test("symbolRows() reads the table under its heading, mergeSymbols() joins equal rows of pages", () => {
  // Property: same symbol, meaning and unit make one row
  const rows = symbolRows(PAGE);
  assertEquals(rows.map(({ symbol, unit }) => [symbol, unit]), [["n", "1/s"], ["η", "1"]]);
  const merged = mergeSymbols([...rows, { ...rows[0]!, page: "docs/house.md" }]);
  assertEquals(merged.find(({ symbol }) => symbol === "n")!.pages, [
    "docs/fan.md",
    "docs/house.md",
  ]);
  assertMatch(
    symbolsPage(merged),
    /\| n \| speed \| 1\/s \| \[fan\.md\]\(fan\.md\), \[house\.md\]/,
  );
  assertEquals(symbolRows({ path: "docs/a.md", text: "# A\n" }), []);
});

Deno.test("symbolFaults() finds unused symbols, missing units and Greek letters left unexplained", () => {
  // Property: a letter counts in comments, not in strings; π needs no row
  assertEquals(greekLetters('/** η, 2π */\nconst a = "λ"; // μ'), ["η", "μ"]);
  const chapter = [{ path: "lib/fan/a.ts", text: "/** P = η·ρ. */" }];
  const page = {
    ...PAGE,
    text: PAGE.text.replace("| η | efficiency | 1 |", "| η | efficiency |  |\n| Zq | x | 1 |"),
  };
  assertEquals(symbolFaults(page, chapter), [
    'docs/fan.md: symbol "η" lacks its meaning or its unit',
    'docs/fan.md: symbol "Zq" is used neither on the page nor in its chapter',
    "lib/fan/a.ts: ρ in a comment is not among the symbols of docs/fan.md",
  ]);
});
