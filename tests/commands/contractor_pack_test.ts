import { assert, assertEquals, assertMatch } from "@std/assert";
import { parseHTML } from "linkedom";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { contractorPack } from "winterground/commands/contractor_pack.ts";
import { readIn } from "winterground/show/kit/reader.ts";
import { startRun } from "winterground/study/mod.ts";
import { beyondWindow, browserStep, inChromium, seriousFindings } from "../harness/browser.ts";
import { inTemporary } from "../harness/in_temporary.ts";
import { openSmallStudy } from "../harness/small_study.ts";
import { pageFaults } from "../press/page_faults.ts";

const study = await openSmallStudy((text) =>
  `study: {units: US}\n${text.replace("winters: 0", "winters: 0, coilLength: 250 ft")}`
);
readIn("US");
const html = await contractorPack(startRun(study, { cacheFolder: null }));
readIn("SI");
const { document } = parseHTML(html);
const words = (id: string) =>
  (document.querySelector(`section[aria-labelledby="${id}"]`)?.textContent ?? "")
    .replaceAll(/[\u00a0\u202f]/g, " ");

Deno.test("the contractor's pack holds five sheets, materials, cuts and the sheet of commissioning", () => {
  // Property: whole, self-contained, in the reader's units
  assertEquals(pageFaults(html), []);
  const sheets = [...document.querySelectorAll(".sheet img")];
  assertEquals(sheets.length, 5);
  for (const sheet of sheets) assertMatch(sheet.getAttribute("alt")!, /, Tabloid$/);
  assertMatch(words("materials"), /\d ft\b/);
  assertMatch(words("cuts"), /tubes 1, 2/);
  const rows = [...document.querySelectorAll('section[aria-labelledby="commissioning"] tr')]
    .filter((row) => /^\d+$/.test(row.querySelector("td")?.textContent ?? ""));
  assertEquals(rows.length, study.tubes.count);
  assertMatch(words("commissioning"), /planned, ft\/min/);
  assert(words("hazards").length > 1000);
  assert(!/NaN|undefined|Infinity/.test(document.body.textContent ?? ""));
});

Deno.test("in a pack of US units no value stands in SI but in brackets behind its US one", () => {
  // Property: tables, captions, paragraphs; product names are the maker's
  const SI =
    /\d[\s\u00a0\u202f](?:m|mm|cm|m²|m³|Pa|kPa|degC|K|kg|L\/s|m\/s|m³\/s|m² K\/W)(?![\w²³/])/;
  for (const part of document.querySelectorAll("td, th, caption, p")) {
    const text = (part.textContent ?? "").replaceAll(/\([^()]*\)/g, "");
    if (!text.startsWith("fan, ")) assert(!SI.test(text), text);
  }
  assert(SI.test("leak test at 60.4\u00a0Pa") && !SI.test("0.242\u00a0in wg"));
});

Deno.test("the pack in a browser", async (test) => {
  // Property: sheets of true size on paper; nothing clipped; no serious fault of axe-core
  await browserStep(test, "sheets are as large as their paper when printed", async () => {
    await inTemporary(async (folder) => {
      const path = join(folder, "pack.html");
      await Deno.writeTextFile(path, html);
      await inChromium(async (tab) => {
        await tab.look({ width: 1632, height: 900, print: true });
        await tab.open(pathToFileURL(path).href);
        const sizes = await tab.value<[number, number][]>(
          `[...document.querySelectorAll(".sheet img")].map((one) => {
            const { width, height } = one.getBoundingClientRect();
            return [width * 25.4 / 96, height * 25.4 / 96];
          })`,
        );
        for (const [width, height] of sizes) {
          assert(Math.abs(width - 431.8) < 0.05 && Math.abs(height - 279.4) < 0.05, `${width}`);
        }
        await tab.look({ width: 1280 });
        assert(await beyondWindow(tab) <= 0);
        assertEquals(await seriousFindings(tab), []);
      });
    });
  });
});
