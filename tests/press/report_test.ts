import { assert, assertEquals, assertMatch, assertStringIncludes } from "@std/assert";
import { parseHTML } from "linkedom";
import type { Notebook } from "winterground/press/mod.ts";
import { renderReport, type ReportInput } from "winterground/press/mod.ts";
import { withoutExercises } from "winterground/press/leave_out.ts";
import { Numbering } from "winterground/press/numbering.ts";
import { pageFaults } from "./page_faults.ts";
import { tinyNotebook } from "./tiny.ts";

const figure = (title: string) =>
  `<figure><figcaption><strong>${title}</strong></figcaption>` +
  `<img alt="a line that falls" src="data:image/svg+xml;base64,PHN2Zy8+">` +
  `<details><summary>numbers</summary><table><thead><tr><th>a</th></tr></thead></table></details></figure>`;
const tableOf = (title: string, columns: number) =>
  `<table><caption>${title}</caption><thead><tr>${
    "<th>x</th>".repeat(columns)
  }</tr></thead></table>`;

/** A notebook whose code cells have these outputs in turn. */
function executed(sources: readonly string[], outputs: readonly (readonly string[])[]): Notebook {
  const notebook = tinyNotebook(...sources);
  const code = notebook.cells.filter((cell) => cell.cell_type === "code");
  outputs.forEach((list, place) => {
    code[place]!.outputs = list.map((html) => ({
      output_type: "display_data",
      data: { "text/html": html, "text/plain": "x" },
      metadata: {},
    }));
  });
  return notebook;
}

const NOTEBOOK = executed(
  [
    "# Report\n\n**What?**",
    "## In short\n\nSee [figure](#figure-where-heat-goes) and [table](#table-air).",
    "const one = 1;",
    "## House & heat",
    "const two = 2;",
    "More words.",
    "const three = 3;",
  ],
  [
    [tableOf("Five", 4), figure("What decides")],
    [figure("Where heat goes"), tableOf("Air", 3)],
    [tableOf("Air", 2)],
  ],
);

function report(change: Partial<ReportInput> = {}): string {
  return renderReport({
    title: "Harrow <Bend>",
    facts: ["Aldersett & around", "A. Writer"],
    notebook: NOTEBOOK,
    provenance: [["library", "1"]],
    workbook: "workbook.html",
    ...change,
  });
}

Deno.test("renderReport() gives one page that loads nothing and has the marks a screen reader needs", () => {
  // Source: WCAG 2.2 (W3C 2023) [wcag-2023], 3.1.1 language, 2.4.1 bypass blocks, 2.4.2 title,
  // 1.3.1 headings in order
  const html = report();
  assertEquals(pageFaults(html), []);
  const { document } = parseHTML(html);
  assertEquals(document.documentElement.getAttribute("lang"), "en");
  assertEquals(document.querySelector("title")?.textContent, "Harrow <Bend>");
  assertEquals(document.querySelectorAll("h1").length, 1);
  assertEquals(document.querySelector("a.skip")?.getAttribute("href"), "#content");
  let level = 1;
  for (const heading of document.querySelectorAll("h1, h2, h3")) {
    const next = Number(heading.tagName.slice(1));
    assert(next <= level + 1, `${heading.textContent} jumps from h${level} to h${next}`);
    level = next;
  }
});

Deno.test("renderReport() shows no code and nothing that stands before the first section", () => {
  // Property: the words for those who open the notebook are not the client's
  const html = report();
  assert(!html.includes("const one"));
  assert(!html.includes("What?"));
  const { document } = parseHTML(html);
  const headings = [...document.querySelectorAll("main h2")].map((one) => one.textContent);
  assertEquals(headings, [
    "In short",
    "Contents",
    "1. House & heat",
    "2. Where these numbers come from",
  ]);
});

Deno.test("renderReport() keeps a unit on one line, and words as they are", () => {
  // Property: no-break spaces between the parts of a unit, nowhere else
  const cell =
    "<table><tr><td>0.66\u00a0Btu/(h ft degF) (1.1\u00a0W/(m K)) or/and (more words)</td></tr>" +
    "</table>";
  const html = report({ notebook: executed(["## In short", "const one = 1;"], [[cell]]) });
  assertStringIncludes(
    html,
    "0.66&#160;Btu/(h&#160;ft&#160;degF) (1.1&#160;W/(m&#160;K)) or/and (more words)",
  );
});

Deno.test("renderReport() numbers figures and tables in their order, and links by their titles", () => {
  // Property: numbers from one without a gap, ids once, every link has its target
  const { document } = parseHTML(report());
  const titles = [...document.querySelectorAll("figcaption, caption")].map((one) =>
    one.textContent
  );
  assertEquals(titles, [
    "Table 1. Five",
    "Figure 1. What decides",
    "Figure 2. Where heat goes",
    "Table 2. Air",
    "Table 3. Air",
  ]);
  const ids = [...document.querySelectorAll("[id]")].map(({ id }) => id);
  assertEquals(new Set(ids).size, ids.length);
  for (const id of ["figure-where-heat-goes", "table-air", "table-air-3"]) assert(ids.includes(id));
  const links = [...document.querySelectorAll("a[href^='#']")];
  for (const link of links) {
    assert(ids.includes(link.getAttribute("href")!.slice(1)), `${link} leads nowhere`);
  }
  const words = document.querySelector(".first .text")?.textContent;
  assertStringIncludes(words ?? "", "See Figure 2 and Table 2.");
});

Deno.test("renderReport() leads to the workbook and says what changed where it is asked", () => {
  // Property: both only where given
  assertStringIncludes(report(), 'href="workbook.html"');
  const { workbook: _, ...alone } = { title: "t", facts: [], notebook: NOTEBOOK, provenance: [] } as
    & ReportInput
    & { workbook?: string };
  assert(!renderReport(alone).includes("workbook"));
  const changes = {
    heading: "What changed",
    sections: [{ heading: "Figures", id: "figures", html: "<p>none</p>" }],
  };
  const html = report({ changes });
  assertMatch(html, /<h2 id="changes">What changed<\/h2>/);
  assertMatch(html, /<a href="#changes">What changed<\/a>/);
});

Deno.test("a piece is wide where its table has more columns than stand beside another", () => {
  // Property: four columns stand beside another, five do not; a picture and a numbered list do
  const numbering = new Numbering();
  assert(!numbering.piece(tableOf("a", 4)).wide);
  assert(numbering.piece(tableOf("b", 5)).wide);
  assert(numbering.piece(`<div class="wide">${tableOf("w", 2)}</div>`).wide);
  assert(!numbering.piece("<ol><li>first</li></ol>").wide);
  assert(!numbering.piece(figure("c")).wide);
  assert(numbering.piece("<p>words</p>").wide);
});

Deno.test("withoutExercises() leaves out the part of that heading and exercises elsewhere", () => {
  // Property: what stands before and behind stays
  const asked = '<div class="exercise">How deep?</div>';
  const notebook = executed(
    ["# A\n", "const a = 1;", "## Exercises", "const b = 2;", "### Harder", "const c = 3;"].concat([
      "## Sources",
      "const d = 4;",
      "const e = 5;",
    ]),
    [["<p>a</p>"], [asked], [asked], ["<p>d</p>"], [asked]],
  );
  const left = withoutExercises(notebook).cells.map(({ source }) => source.trim());
  assertEquals(left, ["# A", "const a = 1;", "## Sources", "const d = 4;"]);
});
