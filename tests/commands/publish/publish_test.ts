import { assert, assertEquals, assertMatch, assertStringIncludes } from "@std/assert";
import { join } from "node:path";
import { parseHTML } from "linkedom";
import { escapeHtml } from "winterground/press/markdown.ts";
import { EXERCISES } from "winterground/show/exercises.ts";
import {
  beyondWindow,
  type Browser,
  browserStep,
  CHROMIUM,
  seriousFindings,
  type Tab,
  type View,
} from "../../harness/browser.ts";
import { FIREFOX } from "../../harness/firefox.ts";
import { inTemporary } from "../../harness/in_temporary.ts";
import { task } from "../../harness/task.ts";
import { pageFaults } from "../../press/page_faults.ts";

async function publish(folder: string, ...args: string[]) {
  const { code, stdout, stderr } = await task("publish", args, folder).output();
  const [out, err] = [stdout, stderr].map((bytes) => new TextDecoder().decode(bytes));
  return { code, out: out!, err: err! };
}

async function htmlIn(folder: string): Promise<Map<string, string>> {
  const found = new Map<string, string>();
  for await (const { name } of Deno.readDir(folder)) {
    if (name.endsWith(".html")) found.set(name, await Deno.readTextFile(join(folder, name)));
  }
  return found;
}

/** Links of a site that lead to no file or no place in it. */
function deadLinks(pages: ReadonlyMap<string, string>): string[] {
  const ids = new Map<string, Set<string>>();
  const links: [string, string][] = [];
  for (const [name, html] of pages) {
    const { document } = parseHTML(html);
    ids.set(name, new Set([...document.querySelectorAll("[id]")].map(({ id }) => id)));
    assertEquals(ids.get(name)!.size, document.querySelectorAll("[id]").length, `${name}: ids`);
    for (const link of document.querySelectorAll("a[href]")) {
      links.push([name, link.getAttribute("href")!]);
    }
  }
  return links.filter(([from, address]) => {
    if (/^(?:https?|mailto):/.test(address)) return false;
    const [file, id] = address.split("#") as [string, string?];
    const target = ids.get(file === "" ? from : file);
    return target === undefined || (id !== undefined && !target.has(decodeURIComponent(id)));
  }).map((link) => link.join(": "));
}

/** Pages of each kind: words, long tables, charts and drawings, formulas, the search. */
const LOOKED_AT = ["index", "search", "soil", "study-file", "lesson-04-tubes", "lesson-08-worth"];
/** The windows of a desk and of a phone, and a sheet of paper. */
const VIEWS: readonly View[] = [{ width: 1280 }, { width: 390 }, { width: 700, print: true }];

// Source: axe-core 4.14, rules of WCAG 2.2 A and AA, no finding that is serious or critical
async function lookAt(tab: Tab, place: string, browser: Browser): Promise<void> {
  const views = browser === CHROMIUM ? VIEWS : VIEWS.filter(({ print }) => print !== true);
  const address = (name: string) => `file://${place}/${name}.html`;
  for (const name of LOOKED_AT) {
    await tab.open(address(name));
    // Firefox does not tell of files
    if (browser === CHROMIUM) assertEquals(tab.asked, [address(name)], `${name} loads something`);
    for (const view of views) {
      await tab.look(view);
      assertEquals(await beyondWindow(tab), 0, `${name} at ${view.width}`);
      assertEquals(await seriousFindings(tab), [], `${name} at ${view.width}`);
    }
    assertEquals(tab.complaints, [], name);
  }
  await tab.look({ width: 390 });
  await tab.open(address("search"));
  await tab.value('document.getElementById("words").focus()');
  await tab.type("frost depth");
  assertMatch(await foundFirst(tab), /^soil\.html|frost/);
  assertMatch(await tab.value('document.getElementById("count").textContent'), /places found/);
  assertEquals(await seriousFindings(tab), []);
  await tab.value('document.getElementById("found").replaceChildren()');
  await tab.value('location.hash = "hollmuller"');
  assertMatch(await foundFirst(tab), /^sources\.html#hollmuller/);
  assertEquals(tab.complaints, []);
  // the checker does find what is wrong
  await tab.value(`document.body.insertAdjacentHTML("beforeend", '<img src="data:,">')`);
  assertEquals((await seriousFindings(tab)).map(({ id }) => id), ["image-alt"]);
}

/** Where the first place found lies, once there is one. */
function foundFirst(tab: Tab): Promise<string> {
  return tab.value<string>(`new Promise((done) => {
    const look = () => {
      const first = document.querySelector("#found a");
      first === null ? setTimeout(look, 50) : done(first.getAttribute("href"));
    };
    look();
  })`);
}

Deno.test("the project's own site: every link leads somewhere, no page loads anything, no solution for students", async (test) => {
  // Property: the committed notebooks and pages; nothing of the user's is touched by a second edition
  await inTemporary(async (folder) => {
    const first = await publish(folder, "--out", "site");
    assertEquals([first.code, first.err], [0, ""]);
    const place = join(folder, "site");
    const pages = await htmlIn(place);
    assert(pages.has("lesson-07-store.html") && pages.has("sources.html") && pages.size > 30);
    assertEquals(deadLinks(pages), []);
    for (const [name, html] of pages) {
      if (name !== "search.html") assertEquals(pageFaults(html), [], name);
      for (const { id, solution, explanation } of EXERCISES) {
        for (const text of [solution!, explanation]) {
          assert(!html.includes(escapeHtml(text)), `${name} gives ${id} away`);
        }
      }
    }
    assertMatch(pages.get("lesson-02-soil-temperature.html")!, /Figure 1\. /);

    for (const browser of [CHROMIUM, FIREFOX]) {
      await browserStep(
        test,
        `in ${browser.name}: accessible, no wider than the window, searched`,
        () => browser.with((tab) => lookAt(tab, place, browser)),
        browser,
      );
    }

    await Deno.writeTextFile(join(place, "mine.txt"), "mine");
    const second = await publish(folder, "--out", "site", "--edition", "instructor");
    assertEquals([second.code, second.err], [0, ""]);
    assertEquals(await Deno.readTextFile(join(place, "mine.txt")), "mine");
    const all = [...(await htmlIn(place)).values()].join("");
    for (const { solution } of EXERCISES) assertStringIncludes(all, escapeHtml(solution!));
  });
});

Deno.test("publish refuses a folder of other files, an unknown edition and a run that is none", async () => {
  // Property: bad input; nothing is written
  await inTemporary(async (folder) => {
    await Deno.mkdir(join(folder, "photos"));
    await Deno.writeTextFile(join(folder, "photos", "cat.txt"), "cat");
    for (
      const [args, message] of [
        [["--out", "photos"], /Cannot write to photos: it contains "cat\.txt"/],
        [["--edition", "teacher"], /"teacher": expected student or instructor/],
        [["--from", "photos"], /no notebooks of a finished run in photos/],
        [["--lessons", "none"], /no folder none/],
      ] as const
    ) {
      const { code, err } = await publish(folder, ...args);
      assertEquals(code, 2, err);
      assertMatch(err, message);
    }
    assertEquals([...Deno.readDirSync(folder)].map(({ name }) => name), ["photos"]);
  });
});

Deno.test("publish shows the lessons of an author, and says which was never run", async () => {
  // Property: a new lesson as `deno task lesson new` writes it
  await inTemporary(async (folder) => {
    const { code } = await task("lesson", ["new", "fan-curve", "--in", "mine"], folder).output();
    assertEquals(code, 0);
    const { code: done, err } = await publish(folder, "--lessons", "mine");
    assertEquals(done, 0, err);
    assertMatch(err, /fan-curve\.ipynb: never run/);
    const html = await Deno.readTextFile(join(folder, "out/site/lesson-fan-curve.html"));
    assertStringIncludes(html, 'class="exercise"');
    assert(!html.includes("Worked solution"));
    assertStringIncludes(
      await Deno.readTextFile(join(folder, "out/site/index.html")),
      "lesson-fan-curve.html",
    );
  });
});
