import { assert, assertEquals } from "@std/assert";
import { pathToFileURL } from "node:url";
import { join } from "node:path";
import { parseNotebook, renderReport } from "winterground/press/mod.ts";
import { NOTEBOOK_FOLDER } from "winterground/commands/notebook_files.ts";
import {
  beyondWindow,
  browserStep,
  inChromium,
  seriousFindings,
  type Tab,
} from "../harness/browser.ts";
import { inTemporary } from "../harness/in_temporary.ts";

/** The report of the committed notebook, opened in a browser. */
async function withReport(work: (tab: Tab) => Promise<void>): Promise<void> {
  const path = join(NOTEBOOK_FOLDER, "10-report.ipynb");
  const notebook = parseNotebook(await Deno.readTextFile(path), path);
  const html = renderReport({
    title: "Harrow Bend, a market garden's winter house",
    facts: ["Aldersett, Northmark (invented)", "The Harrow Bend growers (invented)", "2026-11-26"],
    notebook,
    provenance: [["library", "1"]],
    workbook: "workbook.html",
  });
  await inTemporary(async (folder) => {
    await Deno.writeTextFile(join(folder, "report.html"), html);
    await inChromium(async (tab) => {
      await tab.look({ width: 390, height: 844 });
      await tab.open(pathToFileURL(join(folder, "report.html")).href);
      await work(tab);
    });
  });
}

/** Tables that stick out of the window, or of a box that hides the rest. */
const CLIPPED = `[...document.querySelectorAll("table")].filter((table) => {
  if (table.closest("details:not([open])")) return false;
  const { right } = table.getBoundingClientRect();
  const box = table.parentElement.getBoundingClientRect();
  return right > innerWidth + 1 || right > box.right + 1;
}).map((table) => table.caption?.textContent ?? table.textContent.slice(0, 60))`;

/** Height of the smallest letters of each chart, px: 12 px as it is drawn. */
const LETTERS = `[...document.querySelectorAll("figure img")]
  .map((image) => (image.closest(".drawing") ? 9.8 : 12) * image.width / image.naturalWidth)`;

Deno.test("the report of the committed notebook in a browser", async (test) => {
  // Property: what a reader meets, on a phone and on a desk
  await browserStep(
    test,
    "the report shows whole tables and legible charts on a phone and on a desk",
    async () => {
      // Property: nothing clipped, nothing to move sideways, letters of 9 px and more, on both
      await withReport(async (tab) => {
        for (const width of [390, 1280]) {
          await tab.look({ width, height: 844 });
          assert(await beyondWindow(tab) <= 0, `the page is wider than ${width} px`);
          assertEquals(await tab.value<string[]>(CLIPPED), [], `${width} px`);
          const letters = await tab.value<number[]>(LETTERS);
          assert(letters.length >= 10, `only ${letters.length} pictures`);
          assert(Math.min(...letters) >= 9, `letters of ${Math.min(...letters)} px at ${width} px`);
        }
        assertEquals(tab.complaints, []);
        assertEquals(tab.asked.filter((address) => !/^(?:file|data):/.test(address)), []);
      });
    },
  );

  await browserStep(test, "the whole verdict stands in the first window of a phone", async () => {
    // Property: 390 by 844 px, without scrolling
    await withReport(async (tab) => {
      const bottom = await tab.value<number>(
        'document.querySelector(".verdict").getBoundingClientRect().bottom',
      );
      assert(bottom > 100 && bottom <= 844, `the verdict ends at ${bottom} px`);
    });
  });

  await browserStep(
    test,
    "the report has no serious fault for those who do not see it or use no mouse",
    async () => {
      // Source: WCAG 2.2 (W3C 2023) [wcag-2023], as far as axe-core tests it
      await withReport(async (tab) => assertEquals(await seriousFindings(tab), []));
    },
  );
});
