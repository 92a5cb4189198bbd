import { assert, assertEquals, assertMatch, assertStringIncludes } from "@std/assert";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { beyondWindow, browserStep, inChromium, seriousFindings } from "../harness/browser.ts";
import { inTemporary } from "../harness/in_temporary.ts";
import { task } from "../harness/task.ts";
import { pageFaults } from "../press/page_faults.ts";

async function run(folder: string, args: readonly string[]) {
  const { code, stdout, stderr } = await task("compare", args, folder).output();
  const [out, err] = [stdout, stderr].map((bytes) => new TextDecoder().decode(bytes));
  return { code, out: out!, err: err! };
}

const HEAD = "hour,house temperature without store (degC),house temperature with store (degC)";

/** A made-up finished run. */
async function finishedRun(folder: string, name: string, saved: number, length: number) {
  const place = join(folder, name);
  await Deno.mkdir(place);
  const results = {
    study: { name, title: `A made-up <run> of ${name}`, author: "a", question: "q" },
    inputs: {
      tubes: { length, count: 4 },
      defaults: [{ key: "tubes.count", value: String(saved) }],
    },
    provenance: {
      studyHash: name,
      climateHash: "c",
      library: { version: "1", hash: "h" },
      deno: "2.9.6",
      time: "2026-01-01T00:00:00Z",
    },
    figures: {
      "store.savedHeat": {
        value: saved,
        unit: "kWh",
        label: "heat saved",
        low: saved - 100,
        high: saved + 100,
      },
      "store.coldestHour": { value: -8, unit: "degC", label: "coldest hour" },
    },
    notices: [{ level: "info", chapter: "soil", text: `only in ${name}` }],
  };
  await Deno.writeTextFile(join(place, "results.json"), JSON.stringify(results));
  const hours = Array.from({ length: 8760 }, (_, hour) => `${hour},-5,${hour < saved ? -1 : 9}`);
  await Deno.writeTextFile(join(place, "hourly.csv"), [HEAD, ...hours].join("\n"));
}

Deno.test("compare says what changed between two runs on the terminal, as CSV and as a page", async () => {
  // Property: made-up runs; 3000 to 3500 kWh is 17 % and more than two ranges of ±100 explain
  await inTemporary(async (folder) => {
    await finishedRun(folder, "old", 3000, 20);
    await finishedRun(folder, "new", 3500, 24);
    const { code, out, err } = await run(folder, ["old", "new"]);
    assertEquals(code, 0, err);
    assertStringIncludes(out, "new against old: 1 of 2 figures changed");
    assertMatch(out, /store\.savedHeat\s+3000\skWh\s+3500\skWh\s+\+500\skWh\s+\+17\s% +yes/);
    assertMatch(out, /tubes\.length\s+20\sm\s+24\sm/);
    assert(!out.includes("tubes.count"), out);
    assertMatch(out, /new +info +soil +only in new/);
    assertMatch(out, /gone +info +soil +only in old/);
    const csv = await Deno.readTextFile(join(folder, "out/old-and-new/differences.csv"));
    assertStringIncludes(csv, "figure,store.savedHeat,3000,3500,kWh,500,0.16666666666666666,yes");
    const page = await Deno.readTextFile(join(folder, "out/old-and-new/differences.html"));
    assertEquals(pageFaults(page), []);
    assertStringIncludes(page, "A made-up &lt;run&gt; of old");
    assertMatch(page, /<img alt="[^"]*old is below freezing for 3000 hours, new for 3500/);
    assert(!/<script|NaN|undefined|Infinity/.test(page));
    // a second comparison takes the place of the first, and nothing else is lost
    await Deno.writeTextFile(join(folder, "out/old-and-new/mine.txt"), "mine");
    assertEquals((await run(folder, ["old", "new"])).code, 0);
    assertEquals(await Deno.readTextFile(join(folder, "out/old-and-new/mine.txt")), "mine");
  });
});

Deno.test("the page of what changed in a browser", async (test) => {
  // Property: a phone and a desk, nothing to move but what has a frame; axe-core without serious faults
  await browserStep(test, "no table is wider than the window outside its frame", async () => {
    await inTemporary(async (folder) => {
      await finishedRun(folder, "old", 3000, 20);
      await finishedRun(folder, "new", 3500, 24);
      assertEquals((await run(folder, ["old", "new"])).code, 0);
      await inChromium(async (tab) => {
        await tab.look({ width: 390, height: 844 });
        await tab.open(pathToFileURL(join(folder, "out/old-and-new/differences.html")).href);
        for (const width of [390, 1280]) {
          await tab.look({ width, height: 844 });
          assert(await beyondWindow(tab) <= 0, `${await beyondWindow(tab)} px at ${width} px`);
          assertEquals(await tab.value<string[]>(OUTSIDE), [], `${width} px`);
        }
        assert(await tab.value<number>(`document.querySelectorAll(".frame").length`) >= 3);
        assertEquals(await seriousFindings(tab), []);
        assertEquals(tab.complaints, []);
      });
    });
  });
});

/** Tables and pictures that reach beyond the window and cannot be scrolled to. */
const OUTSIDE = `[...document.querySelectorAll("table, img")].filter((one) =>
  !one.closest(".frame") && one.getBoundingClientRect().right > innerWidth + 1
).map((one) => one.textContent.slice(0, 60))`;

Deno.test("compare of a run with itself says that all is the same; a folder without a run is refused", async () => {
  // Property: identity and bad input
  await inTemporary(async (folder) => {
    await finishedRun(folder, "old", 3000, 20);
    const { code, out } = await run(folder, ["old", "old", "--out", "same"]);
    assertEquals(code, 0);
    for (
      const words of ["0 of 2 figures changed", "All inputs are the same.", "notices are the same"]
    ) {
      assertStringIncludes(out, words);
    }
    await Deno.mkdir(join(folder, "empty"));
    await Deno.writeTextFile(join(folder, "broken.json"), "{");
    for (
      const [args, message] of [
        [["old", "missing"], /^missing: .*folder of a finished run/m],
        [["old", "broken.json"], /^broken\.json: .*no folder/m],
        [["empty", "old"], /^empty\/results\.json: .*results\.json of a finished run/m],
        [["old"], /DIR_A DIR_B/],
      ] as const
    ) {
      const { code, err } = await run(folder, args);
      assertMatch(err, message);
      assertEquals(code, 2, err);
    }
    assertEquals([...Deno.readDirSync(join(folder, "empty"))], []);
  });
});
