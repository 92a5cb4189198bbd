import { assert, assertEquals, assertMatch, assertStringIncludes } from "@std/assert";
import { parseHTML } from "linkedom";
import { type Output, renderWorkbook, type WorkbookInput } from "winterground/press/mod.ts";
import { markdownRenderer } from "winterground/press/markdown.ts";
import { pageFaults } from "./page_faults.ts";
import { tinyNotebook } from "./tiny.ts";

const PICTURE = '<img alt="a line that falls" src="data:image/svg+xml;base64,PHN2Zy8+">';

function report(change: Partial<WorkbookInput> = {}): string {
  const notebook = tinyNotebook("# House & heat\n\nLoss is $U A$.\n\n## Part", "const a = 1 < 2;");
  const code = notebook.cells[1];
  assert(code?.cell_type === "code");
  code.execution_count = 1;
  code.outputs = [display({ "text/html": PICTURE, "text/plain": "a line" })];
  return renderWorkbook({
    title: "Harrow <Bend>",
    facts: [["Place", "Aldersett & around"]],
    notices: [
      { level: "info", about: "soil", text: "moisture is a default" },
      { level: "caution", about: "house", text: "call before you dig" },
    ],
    sections: [{ name: "03-house", notebook }, { name: "04-tubes", notebook }],
    provenance: [["Deno", "2.9.6"]],
    ...change,
  });
}

function display(data: Record<string, unknown>): Output {
  return { output_type: "display_data", data, metadata: {} };
}

Deno.test("renderWorkbook() gives one page that loads nothing from elsewhere", () => {
  // Property: self-contained
  const html = report();
  const { document } = parseHTML(html);
  for (const element of document.querySelectorAll("[src]")) {
    assertMatch(element.getAttribute("src") ?? "", /^data:/);
  }
  assertEquals(document.querySelectorAll("script, link, iframe").length, 0);
  assert(!/@import|url\(/.test(html));
});

Deno.test("renderWorkbook() says in its head that it loads, runs and sends nothing", () => {
  // Source: W3C, "Content Security Policy Level 3" [csp3-web]: policy in a meta element, hash of a
  // style element
  const html = report();
  assertEquals(pageFaults(html), []);
  // the check itself: each of these is found
  assertEquals(pageFaults(html.replace(/<meta http-equiv[^>]*>/, "")), ["0 policies"]);
  for (
    const [hostile, fault] of [
      ["<script>1</script>", "<SCRIPT>"],
      ['<p onclick="1">', 'P onclick="1"'],
      ['<a href="java\tscript:1">x</a>', "A href="],
      ["<style>p{color:red}</style>", "<style>"],
      ['<img src="https://example.org/x.png">', "IMG src="],
      ['<p style="background:url(x)">', "P style="],
    ] as const
  ) {
    const [found] = pageFaults(html.replace("</main>", `${hostile}</main>`));
    assertStringIncludes(found ?? "nothing", fault);
  }
});

Deno.test("renderWorkbook() has the marks a screen reader needs", () => {
  // Source: WCAG 2.2 (W3C 2023) [wcag-2023], 3.1.1 language, 2.4.1 bypass blocks, 2.4.2 title,
  // 1.1.1 text alternatives, 1.3.1 headings in order
  const { document } = parseHTML(report());
  assertEquals(document.documentElement.getAttribute("lang"), "en");
  assertEquals(document.querySelector("title")?.textContent, "Harrow <Bend>");
  assertEquals(document.querySelectorAll("h1").length, 1);
  assertEquals(document.querySelector("a.skip")?.getAttribute("href"), "#content");
  assert(document.querySelector("main#content") !== null);
  for (const image of document.querySelectorAll("img")) assert(image.getAttribute("alt") !== "");
  let level = 1;
  for (const heading of document.querySelectorAll("main h2, main h3, main h4")) {
    const next = Number(heading.tagName.slice(1));
    assert(next <= level + 1, `${heading.textContent} jumps from h${level} to h${next}`);
    level = next;
  }
});

Deno.test("renderWorkbook() gives unique ids and a table of contents that leads to them", () => {
  // Property: every link inside the page has its target, once
  const { document } = parseHTML(report());
  const ids = [...document.querySelectorAll("[id]")].map((element) => element.id);
  assertEquals(new Set(ids).size, ids.length);
  const links = [...document.querySelectorAll("nav a")].map((link) => link.getAttribute("href"));
  assertEquals(links, [
    "#03-house-house-heat",
    "#03-house-part",
    "#04-tubes-house-heat",
    "#04-tubes-part",
    "#provenance",
  ]);
  for (const link of links) assert(ids.includes(link!.slice(1)), `${link} leads nowhere`);
});

Deno.test("renderWorkbook() escapes text, folds code, keeps pictures, puts cautions first", () => {
  // Property: content arrives unchanged
  const html = report();
  assertStringIncludes(html, "Harrow &lt;Bend&gt;");
  assertStringIncludes(html, "Aldersett &amp; around");
  assertStringIncludes(html, "const a = 1 &lt; 2;");
  assertStringIncludes(html, PICTURE);
  const { document } = parseHTML(html);
  const code = document.querySelector("details.code");
  assert(code !== null && !code.hasAttribute("open"));
  const notices = [...document.querySelectorAll(".notices li")].map((item) => item.textContent);
  assertEquals(notices, [
    "Caution house call before you dig",
    "Info soil moisture is a default",
  ]);
});

Deno.test("renderWorkbook() shows plain text, streams, errors and bare pictures", () => {
  // Property: each kind of output is there
  const notebook = tinyNotebook("const a = 1;");
  const cell = notebook.cells[0];
  assert(cell?.cell_type === "code");
  cell.outputs = [
    display({ "text/plain": "3 < 4" }),
    display({ "image/svg+xml": "<svg/>", "text/plain": "a sketch" }),
    display({ "image/png": "AA==\n", "text/plain": "a photo" }),
    display({ "text/markdown": "some *stress*" }),
    { output_type: "stream", name: "stdout", text: "a < b" },
    { output_type: "error", ename: "RangeError", evalue: "too <cold>", traceback: [] },
  ];
  const html = report({ sections: [{ name: "x", notebook }] });
  for (
    const part of [
      "3 &lt; 4",
      '<img alt="a sketch" src="data:image/svg+xml;base64,PHN2Zy8+">',
      '<img alt="a photo" src="data:image/png;base64,AA==">',
      "<em>stress</em>",
      "a &lt; b",
      "RangeError: too &lt;cold&gt;",
    ]
  ) assertStringIncludes(html, part);
});

Deno.test("markdownRenderer() turns formulas into MathML and leaves amounts of money alone", () => {
  // Property: formulas by their marks
  const render = markdownRenderer("x");
  assertStringIncludes(render("loss $U A$ here"), "<math");
  const display = render("$$\nQ = U A \\Delta T\n$$\n");
  assertStringIncludes(display, 'display="block"');
  assertStringIncludes(display, 'class="formula"');
  assert(!render("from $5 to $6 a metre").includes("<math"));
  assert(!render("`$a$` is code").includes("<math"));
});

Deno.test("renderWorkbook() shows a formula that cannot be read as it was written, and says so", () => {
  // Property: a fault in a formula neither passes unseen nor takes the report with it
  const hostile = [
    "\\frac{1",
    "\\unknown<b>x</b>",
    "\\def\\a{\\a\\a}\\a",
    "\\href{javascript:alert(1)}{x}",
    "\\htmlClass{head}{x}",
    "{".repeat(20_000),
    "x^y^z",
    "\u001b\u202e\ud800 \\",
  ];
  for (const formula of hostile) {
    for (const mark of ["$", "$$"]) {
      const notebook = tinyNotebook(`# Text\n\n${mark}${formula}${mark}\n\nafter`, "1;");
      const html = report({ sections: [{ name: "03-house", notebook }] });
      assertEquals(pageFaults(html), [], formula.slice(0, 40));
      assertStringIncludes(html, "after");
      const told = html.includes("cannot be read and is shown as written");
      const { document } = parseHTML(html);
      const shown = [...document.querySelectorAll(".text code")].map((code) => code.textContent);
      assertEquals(shown.length === 1, told, formula.slice(0, 40));
    }
  }
  const notebook = tinyNotebook("# Heat\n\nLoss $\\frac{1$ here", "1;");
  const html = report({ sections: [{ name: "03-house", notebook }] });
  assertStringIncludes(html, "<code>$\\frac{1$</code>");
  assertStringIncludes(html, "The formula &quot;\\frac{1&quot; cannot be read");
});

Deno.test("a formula sets nothing larger than a page", () => {
  // Property: sizes asked for are bounded
  const render = markdownRenderer("x");
  assert(!/="\d{3,}em/.test(render("$\\rule{90000em}{90000em}$")));
});
