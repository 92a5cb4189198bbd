/**
 * `deno task publish`: the lessons and the pages of docs as a static site.
 *
 * @module
 */
import { dirname, join } from "node:path";
import { InputError } from "../basics/mod.ts";
import type { CommandLine, CommandSpec } from "./command_line.ts";
import { openStage } from "./output/stage.ts";
import { sayAside } from "./output/aside.ts";
import { bindSite, type Site } from "../press/site/mod.ts";
import { type Edition, EDITIONS } from "./site/editions.ts";
import { gatherSite } from "./site/gather.ts";
import { introduction, originOf } from "./site/origin.ts";
import { complain, runCommand, say } from "./terminal.ts";

const SPEC: CommandSpec = {
  name: "publish",
  summary:
    "Writes the lessons and the pages of docs as a static site, for students or instructors.",
  args: "",
  minArgs: 0,
  maxArgs: 0,
  options: [
    { name: "out", value: "DIR", meaning: "folder of the site (default: out/site)" },
    {
      name: "edition",
      value: "student|instructor",
      meaning: "without or with worked solutions (default: student)",
    },
    {
      name: "from",
      value: "DIR",
      meaning: "folder of a finished run whose notebooks are shown (default: the project's own)",
    },
    { name: "lessons", value: "DIR", meaning: "folder with lessons of your own, executed" },
    {
      name: "live",
      meaning: "add a page of sliders that computes the settled year in the reader's browser",
    },
  ],
  notes: [
    "No notebook is run: the pages show the outputs that the notebooks hold. --live computes the",
    "study of --from, or the demo study, as far as results kept earlier do not serve.",
    "Exit status: 0 done, 1 something leads nowhere or cannot be read, 2 wrong usage or bad input.",
  ],
};

async function publish({ values, switches }: CommandLine, signal: AbortSignal): Promise<number> {
  const edition = readEdition(values.edition);
  const { from: run, lessons, out = join("out", "site") } = values;
  const { drafts, notRun } = await gatherSite({ edition, run, lessons });
  signal.throwIfAborted();
  const { name, words } = await introduction();
  const origin = await originOf(run);
  const foot = `${EDITION_WORDS[edition]} ${origin}`;
  const live = switches.has("live");
  const site = await bindSite({
    name,
    words: [...words, foot],
    foot,
    drafts,
    ...(live ? { besides: [LIVE_LINK] } : {}),
  });
  signal.throwIfAborted();
  for (const path of notRun) complain(`${path}: never run, so its page shows no results`);
  for (const fault of site.faults) complain(fault);
  await write(site, out, signal, async (folder) => {
    if (live) await (await import("./site/live.ts")).writeLive(run, folder, signal);
  });
  return site.faults.length === 0 ? 0 : 1;
}

const EDITION_WORDS: Readonly<Record<Edition, string>> = {
  student: "Edition for students.",
  instructor: "Edition for instructors, with worked solutions: not for students.",
};

function readEdition(given = "student"): Edition {
  const found = EDITIONS.find((one) => one === given);
  if (found !== undefined) return found;
  throw new InputError(`Cannot make the edition "${given}": expected ${EDITIONS.join(" or ")}`);
}

/** The page of sliders in the contents. */
const LIVE_LINK = {
  file: "live/index.html",
  title: "Move the sliders",
  summary: "The settled year of the study, computed anew in your browser as you change it.",
};

async function write(
  { files }: Site,
  out: string,
  signal: AbortSignal,
  more: (folder: string) => Promise<void>,
): Promise<void> {
  const stage = await openStage(out);
  try {
    await Deno.remove(join(stage.folder, "notebooks")); // there are none
    for (const { path, content } of files) {
      signal.throwIfAborted();
      const place = join(stage.folder, path);
      await Deno.mkdir(dirname(place), { recursive: true });
      await Deno.writeTextFile(place, content);
    }
    await more(stage.folder);
    signal.throwIfAborted();
    const { folder, aside } = await stage.publish();
    sayAside(folder, [...stage.aside, ...aside]);
    say(`done: ${join(folder, "index.html")}, ${files.length} pages`);
  } finally {
    await stage.discard();
  }
}

if (import.meta.main) await runCommand(SPEC, publish);
