import { assert, assertEquals } from "@std/assert";
import { pathToFileURL } from "node:url";
import { join } from "node:path";
import { findBrowser, parseNotebook, printPdf, renderReport } from "winterground/press/mod.ts";
import { NOTEBOOK_FOLDER } from "winterground/commands/notebook_files.ts";
import {
  beyondWindow,
  browserStep,
  inChromium,
  seriousFindings,
  type Tab,
} from "../harness/browser.ts";
import { inTemporary } from "../harness/in_temporary.ts";

/** The report of the committed notebook. */
async function report(paper: "A4" | "Letter" = "A4"): Promise<string> {
  const path = join(NOTEBOOK_FOLDER, "10-report.ipynb");
  const notebook = parseNotebook(await Deno.readTextFile(path), path);
  return renderReport({
    title: "Harrow Bend, a market garden's winter house",
    facts: ["Aldersett, Northmark (invented)", "The Harrow Bend growers (invented)", "2026-11-26"],
    notebook,
    provenance: [["library", "1"]],
    workbook: "workbook.html",
    paper,
  });
}

/** Papers and their width and height, mm. Source: ISO 216 and ANSI/ASME Y14.1, from memory. */
const PAPERS = [["A4", 210, 297], ["Letter", 215.9, 279.4]] as const;

/** The report, opened in a browser. */
async function withReport(work: (tab: Tab) => Promise<void>): Promise<void> {
  await inTemporary(async (folder) => {
    await Deno.writeTextFile(join(folder, "report.html"), await report());
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

/** px, what A4 leaves between the margins of the printed report. */
const PAPER_WIDTH = Math.floor((210 - 24) / 25.4 * 96);

/** Tables whose first row of words lies on the rule below the heads. */
const STRUCK = `[...document.querySelectorAll("thead + tbody > tr:first-child > td:first-child")]
  .filter((cell) => {
    if (cell.closest("details")) return false;
    const words = document.createRange();
    words.selectNodeContents(cell);
    const [word] = words.getClientRects();
    const rule = cell.closest("table").tHead.getBoundingClientRect().bottom;
    return word !== undefined && word.top < rule + 2;
  }).map((cell) => cell.textContent)`;

/** Height of the smallest letters of each chart, px: 12 px as it is drawn. */
const LETTERS = `[...document.querySelectorAll("figure img")]
  .map((image) => (image.closest(".drawing") ? 9.8 : 12) * image.width / image.naturalWidth)`;

Deno.test("the report of the committed notebook in a browser", async (test) => {
  // Property: what a reader meets, on a phone and on a desk
  await browserStep(
    test,
    "the report shows whole tables and legible charts on a phone, on a desk and on paper",
    async () => {
      // Property: nothing clipped, nothing to move sideways; letters of 9 px and more on screens, and
      // of 6 px, 1.6 mm, on paper
      await withReport(async (tab) => {
        for (const width of [390, 1280]) {
          await tab.look({ width, height: 844 });
          assert(await beyondWindow(tab) <= 0, `the page is wider than ${width} px`);
          assertEquals(await tab.value<string[]>(CLIPPED), [], `${width} px`);
          const letters = await tab.value<number[]>(LETTERS);
          assert(letters.length >= 10, `only ${letters.length} pictures`);
          assert(Math.min(...letters) >= 9, `letters of ${Math.min(...letters)} px at ${width} px`);
        }
        await tab.look({ width: PAPER_WIDTH, print: true });
        assert(await beyondWindow(tab) <= 0, "the page is wider than the paper");
        assertEquals(await tab.value<string[]>(CLIPPED), [], "on paper");
        assertEquals(
          await tab.value<string[]>(STRUCK),
          [],
          "first rows under the rule of the heads",
        );
        const letters = await tab.value<number[]>(LETTERS);
        assert(Math.min(...letters) >= 6, `letters of ${Math.min(...letters)} px on paper`);
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

  await browserStep(
    test,
    "the report prints on twelve pages at most, of the paper it names",
    async () => {
      // Property: pages of the printed file, the answer on the first
      const browser = (await findBrowser(Deno.env.get("PATH") ?? ""))!;
      await inTemporary(async (folder) => {
        for (const [paper, width, height] of PAPERS) {
          const [page, pdf] = [join(folder, "report.html"), join(folder, `${paper}.pdf`)];
          await Deno.writeTextFile(page, await report(paper));
          await printPdf({ browser, page, pdf, time: "2026-01-01T00:00:00Z" });
          const text = new TextDecoder("latin1").decode(await Deno.readFile(pdf));
          const pages = [...text.matchAll(/\/Type\s*\/Page\b/g)].length;
          assert(pages >= 5 && pages <= 12, `${pages} pages of ${paper}`);
          const [, across, down] = /\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/.exec(text)!;
          assert(Math.abs(Number(across) / 72 - width / 25.4) < 0.02, `${paper}: ${across}`);
          assert(Math.abs(Number(down) / 72 - height / 25.4) < 0.02, `${paper}: ${down}`);
        }
      });
    },
  );
});
