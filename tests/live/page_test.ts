import { assert, assertAlmostEquals, assertEquals } from "@std/assert";
import { pathToFileURL } from "node:url";
import { liveStudy } from "winterground/live/build/study_data.ts";
import { writePageOf } from "winterground/live/build/write_page.ts";
import { FIGURE_LINES, figureText } from "winterground/live/page/text.ts";
import { liveYear } from "winterground/live/sum/year.ts";
import type { Changes, LiveYear, Resolution } from "winterground/live/types.ts";
import { soilProperties } from "winterground/soil/properties.ts";
import {
  beyondWindow,
  browserStep,
  inChromium,
  seriousFindings,
  type Tab,
} from "../harness/browser.ts";
import { inTemporary } from "../harness/in_temporary.ts";
import { openSmallStudy } from "../harness/small_study.ts";

const study = await openSmallStudy();
const carried = liveStudy(study);

/** What the library computes of a case here. */
function yearHere(changes: Changes, resolution: Resolution): LiveYear {
  return liveYear({ study: carried, climate: study.climate, changes, resolution });
}

/** Writes the small study's page into a folder of its own, and opens it from there. */
async function withPage(work: (tab: Tab, address: string) => Promise<void>): Promise<void> {
  const known = { full: yearHere({}, "full"), porosity: soilProperties(study.soil).porosity };
  await inTemporary(async (folder) => {
    const path = await writePageOf(study, known, folder);
    await inChromium((tab) => work(tab, pathToFileURL(path).href));
  });
}

const wait = (milliseconds: number) => new Promise((resume) => setTimeout(resume, milliseconds));

/** Waits until the page's script has started its worker. */
async function started(tab: Tab): Promise<void> {
  while (await tab.value<boolean>(`document.getElementById("panel").hidden`)) await wait(20);
}

/** Waits until the page is done with a case; gives what it says. */
async function finished(tab: Tab): Promise<string> {
  for (;;) {
    const said = await tab.value<string>(`document.getElementById("status").textContent`);
    if (/ saves |cannot/.test(said)) return said;
    await wait(50);
  }
}

/** Does something to the page and waits until its case is done. */
async function after(tab: Tab, doing: string): Promise<string> {
  await tab.value(`document.getElementById("status").textContent = ""; ${doing}`);
  return await finished(tab);
}

/** Numbers of a column of the table of figures. */
function column(tab: Tab, place: number): Promise<number[]> {
  return tab.value<number[]>(
    `[...document.querySelectorAll("#figures td:nth-of-type(${place}) data")].map((one) => Number(one.value))`,
  );
}

function sameFigures(found: readonly number[], { figures }: LiveYear): void {
  assertEquals(found.length, FIGURE_LINES.length);
  FIGURE_LINES.forEach((line, k) => {
    const value = figures[line.key];
    assertAlmostEquals(found[k]!, value, 1e-6 * Math.max(1, Math.abs(value)), line.key);
    assertEquals(figureText(line, found[k]!, "SI"), figureText(line, value, "SI"), line.key);
  });
}

const move = (name: string, value: number) =>
  `{ const slider = document.getElementById("slider-${name}");
     slider.value = ${value}; slider.dispatchEvent(new Event("input", { bubbles: true })); }`;

Deno.test("a live page computes from a file what the library computes, and shows it to anybody", async (test) => {
  // Property: the same sums in Chromium and here at 1e-6, every printed digit the same; no network
  await browserStep(test, "in a browser", () => withPage(lookAtPage));
});

async function lookAtPage(tab: Tab, address: string): Promise<void> {
  await tab.look({ width: 1280 });
  await tab.open(address);
  await started(tab);
  sameFigures(await column(tab, 1), yearHere({}, "full"));

  assert(/quick year/.test(await after(tab, move("length", 8))));
  sameFigures(await column(tab, 2), yearHere({ length: 8 }, "screening"));
  assertEquals(await tab.value("location.hash.replace(/&study=.*/, '')"), "#length=8");

  await after(tab, `document.getElementById("full").click()`);
  sameFigures(await column(tab, 2), yearHere({ length: 8 }, "full"));

  for (const width of [1280, 390]) {
    await tab.look({ width });
    await wait(100);
    assertEquals(await beyondWindow(tab), 0, `${width} px`);
    assertEquals(await seriousFindings(tab), [], `${width} px`);
    assert(await smallestText(tab) >= 9, `${width} px`);
  }

  await tab.value(`document.getElementById("slider-leakage").focus()`);
  await tab.press("ArrowRight");
  assert(/leakage=/.test(await tab.value("location.hash")));
  assertEquals(tab.complaints, []);
  assertEquals(tab.asked.filter((asked) => !/^(?:file|blob):/.test(asked)), []);

  await tab.open(`${address}?again#length=abc&speed=0.5&units=US`);
  await started(tab);
  const faults = await tab.value<string>(`document.getElementById("link-faults").textContent`);
  assert(/length/.test(faults), faults);
  assert(/degF/.test(await tab.value(`document.getElementById("figures").textContent`)));
}

/** px, height of the smallest words in the pictures. */
function smallestText(tab: Tab): Promise<number> {
  return tab.value<number>(
    `Math.min(...[...document.querySelectorAll("figure .picture text")]
      .filter((text) => text.getClientRects().length > 0)
      .map((text) => parseFloat(getComputedStyle(text).fontSize) *
        text.getCTM().a))`,
  );
}
