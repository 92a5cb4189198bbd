import { assert, assertAlmostEquals, assertEquals } from "@std/assert";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import type { ClimateYear } from "winterground/climate/types.ts";
import { liveStudy } from "winterground/live/build/study_data.ts";
import { writePageOf } from "winterground/live/build/write_page.ts";
import { FIGURE_LINES, figureText } from "winterground/live/page/text.ts";
import { liveYear } from "winterground/live/sum/year.ts";
import type { Changes, LiveYear, Resolution } from "winterground/live/types.ts";
import { soilProperties } from "winterground/soil/properties.ts";
import { openStudy } from "winterground/study/mod.ts";
import {
  beyondWindow,
  type Browser,
  browserStep,
  CHROMIUM,
  seriousFindings,
  type Tab,
} from "../harness/browser.ts";
import { FIREFOX } from "../harness/firefox.ts";
import { inTemporary } from "../harness/in_temporary.ts";
import { openSmallStudy, writeSmallStudy } from "../harness/small_study.ts";
import { COLUMNS, tableOf } from "./weather_case.ts";

const study = await openSmallStudy();
const carried = liveStudy(study);

/** What the library computes of a case here. */
function yearHere(
  changes: Changes,
  resolution: Resolution,
  climate: ClimateYear = study.climate,
): LiveYear {
  return liveYear({ study: carried, climate, changes, resolution });
}

/** Writes the small study's page into a folder of its own, and opens it from there. */
async function withPage(
  browser: Browser,
  work: (tab: Tab, address: string) => Promise<void>,
): Promise<void> {
  const known = { full: yearHere({}, "full"), porosity: soilProperties(study.soil).porosity };
  await inTemporary(async (folder) => {
    const path = await writePageOf(study, known, folder);
    await browser.with((tab) => work(tab, pathToFileURL(path).href));
  });
}

/** Has a look at the page in every browser that is here. */
async function inBrowsers(
  test: Deno.TestContext,
  work: (tab: Tab, address: string) => Promise<void>,
): Promise<void> {
  for (const browser of [CHROMIUM, FIREFOX]) {
    await browserStep(test, `in ${browser.name}`, () => withPage(browser, work), browser);
  }
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
  // Property: the same sums in a browser and here at 1e-6, every printed digit the same; no network
  await inBrowsers(test, lookAtPage);
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

/** Drops files on the page, as a hand does that drags them there. */
const drop = (files: Readonly<Record<string, string>>) =>
  `{ const dataTransfer = new DataTransfer();
     for (const [name, text] of Object.entries(${JSON.stringify(files)})) {
       dataTransfer.items.add(new File([text], name));
     }
     document.body.dispatchEvent(
       new DragEvent("drop", { dataTransfer, bubbles: true, cancelable: true }),
     ); }`;

const weatherFaults = `document.getElementById("weather-faults").textContent`;

Deno.test("a weather file dropped on a page is what it computes with", async (test) => {
  // Property: the figures are those of the study opened with that file; nothing leaves the page
  await inBrowsers(test, lookAtOwnWeather);
});

/** The study's climate when it is opened with the table of {@link tableOf}. */
function climateOfTable(): Promise<ClimateYear> {
  return inTemporary(async (folder) => {
    const path = await writeSmallStudy(folder);
    const [climate, columns] = ["mast.csv", "mast.yaml"].map((name) => join(folder, name));
    await Deno.writeTextFile(climate!, tableOf(study.climate));
    await Deno.writeTextFile(columns!, COLUMNS);
    return (await openStudy(path, { climate, columns })).climate;
  });
}

async function lookAtOwnWeather(tab: Tab, address: string): Promise<void> {
  const table = tableOf(study.climate);
  const climate = await climateOfTable();
  await tab.look({ width: 390 });
  await tab.open(address);
  await started(tab);

  await tab.value(drop({ "mast.csv": table }));
  while (await tab.value(`${weatherFaults} === ""`)) await wait(50);
  assert(/mast\.csv:1: .*columns file/.test(await tab.value(weatherFaults)));
  sameFigures(await column(tab, 1), yearHere({}, "full"));

  const said = await after(tab, drop({ "mast.csv": table, "mast.yaml": COLUMNS }));
  assert(/^A quick year of the study on your weather: /.test(said), said);
  assertEquals(await tab.value(weatherFaults), "");
  assert(
    /mast\.csv, mast\.yaml: Testfield/.test(
      await tab.value(`document.getElementById("weather").textContent`),
    ),
  );
  sameFigures(await column(tab, 1), yearHere({}, "screening", climate));

  await after(tab, `document.getElementById("full").click()`);
  sameFigures(await column(tab, 1), yearHere({}, "full", climate));
  await after(tab, move("leakage", 0.9));
  sameFigures(await column(tab, 2), yearHere({ leakage: 0.9 }, "screening", climate));
  assert(/weather=own/.test(await tab.value("location.hash")));

  for (const width of [1280, 390]) {
    await tab.look({ width });
    await wait(100);
    assertEquals(await beyondWindow(tab), 0, `${width} px`);
    assertEquals(await seriousFindings(tab), [], `${width} px`);
  }
  await after(tab, `document.getElementById("back").click()`);
  await tab.value(`document.getElementById("study-weather").click()`);
  sameFigures(await column(tab, 1), yearHere({}, "full"));
  assertEquals(tab.complaints, []);
  assertEquals(tab.asked.filter((asked) => !/^(?:file|blob):/.test(asked)), []);

  await tab.open(`${address}?again#weather=own`);
  await started(tab);
  const faults = await tab.value<string>(`document.getElementById("link-faults").textContent`);
  assert(/which a link cannot hold/.test(faults), faults);
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
