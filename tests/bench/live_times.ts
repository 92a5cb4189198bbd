/**
 * Times the live page of the demo as its reader has it, in Chromium: every slider moved, from the
 * end of its rest to the first picture and to all figures. With `one`, on one processor, where the
 * halves of a year are computed one after the other. Names of sliders behind it: those alone. Wall
 * time on this machine: only for a machine that does nothing else; on another, the ratio of two
 * sliders timed in one run.
 */
import { pathToFileURL } from "node:url";
import { say } from "../../lib/commands/terminal.ts";
import { liveStudy } from "../../lib/live/build/study_data.ts";
import { writePageOf } from "../../lib/live/build/write_page.ts";
import { liveYear } from "../../lib/live/sum/year.ts";
import { soilProperties } from "../../lib/soil/properties.ts";
import { defaultStudyPath, openStudy } from "../../lib/study/mod.ts";
import { inChromium, type Tab } from "../harness/browser.ts";

const one = Deno.args.includes("one");
const only = Deno.args.filter((word) => word !== "one");

/** Moves of each slider, as shares of its reach, from the study's own value. */
const MOVES = [0.3, 0.7, 0.45, 0.9] as const;

const study = await openStudy(defaultStudyPath());
const known = {
  full: liveYear({
    study: liveStudy(study),
    climate: study.climate,
    changes: {},
    resolution: "full",
  }),
  porosity: soilProperties(study.soil).porosity,
};

/** Notes in the page when the workers were asked, when they first told a year, and when all was told. */
const LISTEN = `
  window.times = {};
  const own = Worker.prototype.postMessage;
  Worker.prototype.postMessage = function (message, ...rest) {
    if (message.type === "run") window.times = { asked: performance.now() };
    return own.call(this, message, ...rest);
  };
  new MutationObserver(() => {
    const now = performance.now(), { times } = window;
    if (times.asked === undefined) return;
    if (/ saves |cannot/.test(document.getElementById("status").textContent)) times.all ??= now;
  }).observe(document.getElementById("status"), { childList: true, characterData: true, subtree: true });
  new MutationObserver(() => { window.times.first ??= performance.now(); })
    .observe(document.getElementById("days"), { childList: true });`;

const wait = (milliseconds: number) => new Promise((resume) => setTimeout(resume, milliseconds));

/** Does something to the page; s from the question to the first picture and to all figures. */
async function timed(tab: Tab, doing: string): Promise<{ first: number; all: number }> {
  await tab.value(
    `window.times = {}; document.getElementById("status").textContent = ""; ${doing}`,
  );
  for (;;) {
    await wait(50);
    const { asked, first, all } = await tab.value<Record<"asked" | "first" | "all", number>>(
      "window.times",
    );
    if (all !== undefined) return { first: (first - asked) / 1000, all: (all - asked) / 1000 };
  }
}

const median = (values: readonly number[]) => values.toSorted((a, b) => a - b)[values.length >> 1]!;
const reach = (values: readonly number[]) =>
  `${median(values).toFixed(2)} (${Math.min(...values).toFixed(2)} to ${
    Math.max(...values).toFixed(2)
  }) s`;

async function time(tab: Tab, address: string): Promise<void> {
  if (one) {
    await tab.before(`Object.defineProperty(navigator, "hardwareConcurrency", { value: 1 })`);
  }
  await tab.open(address);
  while (await tab.value<boolean>(`document.getElementById("panel").hidden`)) await wait(50);
  await tab.value(LISTEN);
  await wait(20_000); // the workers work out what moves start from
  const names = await tab.value<string[]>(
    `[...document.querySelectorAll("input[id^=slider-]")].map(({ id }) => id.slice(7))`,
  );
  for (const name of names.filter((known) => only.length === 0 || only.includes(known))) {
    const found: { first: number; all: number }[] = [];
    for (const share of MOVES) {
      found.push(
        await timed(
          tab,
          `{ const one = document.getElementById("slider-${name}");
           one.value = +one.min + ${share} * (one.max - one.min);
           one.dispatchEvent(new Event("input", { bubbles: true })); }`,
        ),
      );
    }
    await tab.value(`document.getElementById("back").click()`);
    say(
      `${name.padEnd(14)} first ${reach(found.map(({ first }) => first))}, ` +
        `all ${reach(found.map(({ all }) => all))}`,
    );
  }
}

const folder = await Deno.makeTempDir();
try {
  const path = await writePageOf(study, known, folder);
  await inChromium((tab) => time(tab, pathToFileURL(path).href));
} finally {
  await Deno.remove(folder, { recursive: true });
}
