import { assert, assertEquals } from "@std/assert";
import { pathToFileURL } from "node:url";
import { join } from "node:path";
import { parseNotebook, renderWorkbook } from "winterground/press/mod.ts";
import { listNotebooks } from "winterground/commands/notebook_files.ts";
import {
  beyondWindow,
  browserStep,
  inChromium,
  seriousFindings,
  type Tab,
} from "../harness/browser.ts";
import { inTemporary } from "../harness/in_temporary.ts";

/** Words of table cells that stand on more than one line, hyphens and dashes aside. */
const BROKEN_WORDS = `(() => {
  const broken = [];
  for (const cell of document.querySelectorAll("td, th, caption")) {
    if (cell.closest("details:not([open])")) continue;
    const texts = document.createTreeWalker(cell, NodeFilter.SHOW_TEXT);
    for (let node; (node = texts.nextNode());) {
      for (const { 0: word, index } of node.data.matchAll(/[^\\s\\u2013-]+/g)) {
        const place = document.createRange();
        place.setStart(node, index);
        place.setEnd(node, index + word.length);
        const lines = [...place.getClientRects()].filter(({ width }) => width > 0);
        if (new Set(lines.map(({ top }) => Math.round(top))).size > 1) broken.push(word);
      }
    }
  }
  return broken;
})()`;

/** Tables that stick out of the window, or of a box that hides the rest. */
const CLIPPED = `[...document.querySelectorAll("table")].filter((table) => {
  if (table.closest("details:not([open])")) return false;
  const { right } = table.getBoundingClientRect();
  for (let box = table.parentElement; box !== null; box = box.parentElement) {
    const flow = getComputedStyle(box).overflowX;
    if (flow === "visible") continue;
    const scrolls = (flow === "auto" || flow === "scroll") && !matchMedia("print").matches;
    return !scrolls && right > box.getBoundingClientRect().right + 1;
  }
  return right > document.documentElement.clientWidth + 1;
}).map((table) => (table.caption?.textContent ?? table.textContent).slice(0, 60))`;

/** Boxes of tables that must be moved sideways and cannot be, without a mouse. */
const MOUSE_ONLY = `[...document.querySelectorAll("main :has(table)")].filter((box) =>
  ["auto", "scroll"].includes(getComputedStyle(box).overflowX) && box.tabIndex < 0 &&
  box.scrollWidth > box.clientWidth + 1).map((box) => box.textContent.trim().slice(0, 60))`;

/** Tables of figures with their keys that must be moved sideways. */
const MOVED_KEYS = `[...document.querySelectorAll(".frame")].filter((frame) =>
  frame.textContent.includes("key in results.json") && frame.scrollWidth > frame.clientWidth + 1)
  .map((frame) => frame.textContent.slice(0, 200))`;

/** px, what A4 leaves between the margins of the printed workbook. */
const PAPER_WIDTH = Math.floor((210 - 32) / 25.4 * 96);

async function withWorkbook(work: (tab: Tab) => Promise<void>): Promise<void> {
  const files = (await listNotebooks()).filter(({ name }) => name !== "10-report");
  const sections = await Promise.all(files.map(async ({ name, path }) => ({
    name,
    notebook: parseNotebook(await Deno.readTextFile(path), path),
  })));
  const page = renderWorkbook({
    title: "Harrow Bend, a market garden's winter house",
    facts: [["Author", "The Harrow Bend growers (invented)"]],
    notices: [],
    sections,
    provenance: [["library", "1"]],
  });
  await inTemporary(async (folder) => {
    await Deno.writeTextFile(join(folder, "workbook.html"), page);
    await inChromium(async (tab) => {
      await tab.look({ width: 1280 });
      await tab.open(pathToFileURL(join(folder, "workbook.html")).href);
      await work(tab);
    });
  });
}

Deno.test("the workbook of the committed notebooks in a browser", async (test) => {
  // Property: what a reader meets, on a phone, on a desk and on paper
  await browserStep(
    test,
    "no table is clipped, no word of a table is broken on a screen, wide tables move with keys",
    async () => {
      await withWorkbook(async (tab) => {
        for (const open of [false, true]) {
          await tab.value(
            `document.querySelectorAll("details").forEach((one) => one.open = ${open})`,
          );
          for (const width of [1280, 390]) {
            await tab.look({ width, height: 844 });
            assert(await beyondWindow(tab) <= 0, `the page is wider than ${width} px`);
            assertEquals(await tab.value<string[]>(CLIPPED), [], `${width} px`);
            assertEquals(await tab.value<string[]>(BROKEN_WORDS), [], `${width} px`);
            assertEquals(await tab.value<string[]>(MOUSE_ONLY), [], `${width} px`);
            if (width === 1280) assertEquals(await tab.value<string[]>(MOVED_KEYS), []);
          }
          await tab.look({ width: PAPER_WIDTH, print: true });
          const broken = await tab.value<string[]>(BROKEN_WORDS);
          assertEquals(broken.filter(({ length }) => length <= 8), [], "units stay whole on paper");
          assertEquals(
            await tab.value<string[]>(CLIPPED),
            [],
            `on paper, tables behind pictures ${open ? "open" : "closed"}`,
          );
          assert(await beyondWindow(tab) <= 0, "the page is wider than the paper");
        }
        assertEquals(tab.complaints, []);
      });
    },
  );

  await browserStep(
    test,
    "the workbook has no serious fault for those who do not see it or use no mouse",
    async () => {
      // Source: WCAG 2.2 (W3C 2023) [wcag-2023], as far as axe-core tests it
      await withWorkbook(async (tab) => assertEquals(await seriousFindings(tab), []));
    },
  );
});
