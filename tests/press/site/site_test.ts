import { assert, assertEquals, assertMatch, assertStringIncludes } from "@std/assert";
import { parseHTML } from "linkedom";
import { bindSite } from "winterground/press/site/mod.ts";
import { pageFaults } from "../page_faults.ts";
import { lessonPage, notebookOf, shown, textPage } from "./tiny_site.ts";

const FRAME = { name: "A site", foot: "Of a test.", words: ["Words."] };
const PICTURE = btoa('<svg viewBox="0 0 760 300"><text font-size="10">a</text></svg>');
const CHART = `<figure><figcaption><strong>Heat by month</strong></figcaption>
<img alt="a" src="data:image/svg+xml;base64,${PICTURE}">
<details><summary>Table</summary><table><tr><td>1</td></tr></table></details></figure>`;

async function pagesOf(...drafts: Parameters<typeof bindSite>[0]["drafts"][number][]) {
  const { files, faults } = await bindSite({ ...FRAME, drafts });
  return {
    faults,
    page: (path: string) => files.find((file) => file.path === path)!.content,
    files,
  };
}

Deno.test("bindSite() gives each page one title, headings with ids and links that lead there", async () => {
  // Property: two pages that link to each other, to headings and to a source
  const { page, faults } = await pagesOf(
    textPage(
      "soil",
      "# Soil\n\nWet ground. More.\n\n## Frost depth (m)\n\n## Frost depth (m)\n\nSee [b](b.md#deep).",
    ),
    textPage(
      "b",
      "# B\n\n## Deep\n\nBack to [soil](soil.md#frost-depth-m-1), `docs/soil.md`, [colebrook-1939].",
    ),
    textPage("sources", "# Sources\n\n### colebrook-1939\n\nA paper."),
  );
  assertEquals(faults, []);
  const { document } = parseHTML(page("soil.html"));
  assertEquals(document.querySelectorAll("h1").length, 1);
  const ids = [...document.querySelectorAll("h2[id]")].map(({ id }) => id);
  assertEquals(ids, ["frost-depth-m", "frost-depth-m-1"]);
  assertStringIncludes(page("soil.html"), 'href="b.html#deep"');
  assertStringIncludes(page("b.html"), 'href="soil.html#frost-depth-m-1"');
  assertStringIncludes(page("b.html"), '<a href="soil.html"><code>docs/soil.md</code></a>');
  assertStringIncludes(
    page("b.html"),
    '<a href="sources.html#colebrook-1939">[colebrook-1939]</a>',
  );
  assertMatch(page("index.html"), /<a href="soil\.html">Soil<\/a> Wet ground\./);
});

Deno.test("bindSite() names pages of another making in the contents", async () => {
  // Property: file, title and sentence; none without them
  const live = { file: "live/index.html", title: "Move <it>", summary: "A page." };
  const drafts = [textPage("a", "# A")];
  const contents = async (besides?: readonly (typeof live)[]) =>
    (await bindSite({ ...FRAME, drafts, ...(besides ? { besides } : {}) })).files[0]!.content;
  assertStringIncludes(
    await contents([live]),
    '<a href="live/index.html">Move &lt;it&gt;</a> A page.',
  );
  assert(!(await contents()).includes("live/"));
});

Deno.test("bindSite() names the links that lead nowhere and leaves their words", async () => {
  // Property: a missing page and a missing heading; a file without a page is no fault
  const { page, faults } = await pagesOf(
    textPage("a", "# A\n\n[one](none.md) [two](a.md#gone) [three](../LICENSE) [four](https://x.y)"),
  );
  assertEquals(faults, [
    'docs/a.md: the link "none.md" leads nowhere',
    'docs/a.md: the link "a.md#gone" leads nowhere',
  ]);
  assertStringIncludes(page("a.html"), 'one two three <a href="https://x.y">four</a>');
});

Deno.test("bindSite() numbers figures and tables by page, lists them, and frames what is wide", async () => {
  // Property: one chart with a table behind it, one table, a text that names the chart
  const { page } = await pagesOf(
    lessonPage(
      "01-frost",
      notebookOf([
        shown("await show(chart);", CHART),
        shown("await show(table);", "<table><tr><td>1</td><td>2</td><td>3</td></tr></table>"),
      ], "# Frost\n\nLook at [figure](#figure-heat-by-month)."),
    ),
  );
  const html = page("lesson-01-frost.html");
  const { document } = parseHTML(html);
  assertEquals(document.querySelector("figcaption")!.textContent, "Figure 1. Heat by month");
  assertEquals(document.querySelectorAll("caption").length, 1);
  assertStringIncludes(html, '<a href="#figure-heat-by-month">Figure 1</a>');
  assertStringIncludes(
    page("figures.html"),
    '<a href="lesson-01-frost.html#figure-heat-by-month">',
  );
  // 760 px with words of 10 are 684 px with words of 9
  assertEquals(document.querySelector("img")!.getAttribute("style"), "min-width:684px");
  for (const frame of document.querySelectorAll(".frame")) {
    assertEquals(frame.getAttribute("tabindex"), "0");
    assert(frame.getAttribute("aria-label") !== "");
  }
});

Deno.test("bindSite() names figures and tables of other pages by their number there and the page", async () => {
  // Property: numbers count by page, so a link across says which page's; other words stay
  const lesson = lessonPage(
    "01-frost",
    notebookOf([
      shown("await show(table);", "<table><tr><td>1</td></tr></table>"),
      shown("await show(chart);", CHART),
    ], "# Frost\n\nText."),
  );
  const from = `../${lesson.source}#figure-heat-by-month`;
  const { page, faults } = await pagesOf(
    textPage("a", `# A\n\n[figure](${from}) and [the chart](${from}).`),
    lesson,
  );
  assertEquals(faults, []);
  const to = "lesson-01-frost.html#figure-heat-by-month";
  assertStringIncludes(
    page("a.html"),
    `<a href="${to}">Figure 1 of Frost</a> and <a href="${to}">the chart</a>`,
  );
});

Deno.test("bindSite() marks code, sets formulas, and lets no page load or run anything but the search", async () => {
  // Property: policies of every page; what a text smuggles in is gone
  const { page, files } = await pagesOf(
    textPage(
      "a",
      "# A\n\n$$ q = \\frac{T_1}{R} $$\n\n```yaml\nlength: 3 m\n```\n\n<script>alert(1)</script>",
    ),
    lessonPage("01-frost", notebookOf([shown('const x = "a"; // why', "<p onclick=x()>p</p>")])),
  );
  assertStringIncludes(page("a.html"), "<math");
  const formula = parseHTML(page("a.html")).document.querySelector(".formula")!;
  assertEquals(formula.getAttribute("tabindex"), "0");
  assertEquals(formula.getAttribute("aria-label"), "Formula");
  assertStringIncludes(page("a.html"), '<span class="hljs-attr">length:</span>');
  assertStringIncludes(page("lesson-01-frost.html"), '<span class="hljs-comment">// why</span>');
  for (const { path, content } of files) {
    assert(!/alert\(1\)|onclick/.test(content), path);
    if (path === "search.html") continue;
    assertEquals(pageFaults(content), [], path);
  }
  const search = page("search.html");
  const faults = pageFaults(search).filter((fault) =>
    !["script-src is allowed", "<SCRIPT>", "<INPUT>"].includes(fault)
  );
  assertEquals(faults, []);
  assertMatch(search, /script-src 'sha256-[A-Za-z0-9+/=]+'; img-src/);
  assert(!/unsafe-eval|\beval\(|new Function/.test(search));
});
