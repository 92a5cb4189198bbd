/** Readers of what an earlier run kept: results folders and the cache. @module */
import { serialize } from "node:v8";
import { join } from "node:path";
import { createHash } from "node:crypto";
import { openStage } from "winterground/commands/output/stage.ts";
import { readCommandLine } from "winterground/commands/command_line.ts";
import { diskCache } from "winterground/study/run/cache.ts";
import { findShard } from "winterground/study/sweep/mod.ts";
import type { Reader } from "./readers.ts";

const KEY = "5e1f";
const RESULT = {
  airTemperature: new Float64Array([1.5, -2, 3]),
  name: "x",
  list: [1, 2],
  none: null,
};
const hex = (text: string) => createHash("sha256").update(text).digest("hex");
const MINE = { "notes.txt": "my notes", "notebooks/mine.ipynb": "my own" };
const OWN = { "results.json": "figures", "notebooks/01.ipynb": "one" };

/** An entry as the cache writes it. */
function entry(): Uint8Array<ArrayBuffer> {
  const content = new Uint8Array(serialize(RESULT));
  const digest = createHash("sha256").update(KEY).update("\0").update(content).digest();
  const bytes = new Uint8Array(digest.length + content.length);
  bytes.set(digest);
  bytes.set(content, digest.length);
  return bytes;
}

async function write(folder: string, files: Readonly<Record<string, string>>): Promise<void> {
  await Deno.mkdir(join(folder, "notebooks"), { recursive: true });
  for (const [name, text] of Object.entries(files)) {
    await Deno.writeTextFile(join(folder, name), text);
  }
}

/** Publishes a run into a folder with a damaged list; asks that the user's files are still there. */
async function publishOver(list: string, folder: string): Promise<null> {
  const target = join(folder, "farm");
  await Deno.remove(target, { recursive: true }).catch(() => {});
  await write(target, { ...MINE, ...OWN });
  await Deno.copyFile(list, join(target, "written.json"));
  const refusal = await publish(target).then(() => null, (error) => error);
  for (const [name, text] of Object.entries(MINE)) {
    const found = await Deno.readTextFile(join(target, name));
    if (found !== text) throw new Error(`${name} of the user's was changed`);
  }
  if (refusal !== null) throw refusal;
  return null;
}

async function publish(target: string): Promise<void> {
  const stage = await openStage(target);
  try {
    await write(stage.folder, { "results.json": "new figures" });
    await stage.publish();
  } finally {
    await stage.discard();
  }
}

/** Command lines, one word a line. */
const COMMAND_LINES = [
  "my.yaml\n--out\nfarm\n--quick",
  "--chapters=1-3\nmy.yaml\n--cell-limit\n30",
];
const OPTIONS = ["out", "chapters", "cell-limit"].map((name) => ({
  name,
  value: "X",
  meaning: "x",
}));
const SPEC = {
  name: "study",
  summary: "x",
  args: "[STUDY.yaml]",
  minArgs: 0,
  maxArgs: 1,
  options: [...OPTIONS, { name: "quick", meaning: "x" }],
};

/** All of them. */
export const KEPT_READERS: readonly Reader[] = [
  {
    name: "entry of the cache",
    share: 2,
    bases: () => Promise.resolve([{ name: "result.bin", text: "", bytes: entry() }]),
    read: async (path, folder) => {
      await Deno.mkdir(join(folder, "cache", KEY), { recursive: true });
      await Deno.copyFile(path, join(folder, "cache", KEY, "result.bin"));
      const found = await diskCache(join(folder, "cache")).get(KEY, () => RESULT);
      if (hex(JSON.stringify(found)) !== hex(JSON.stringify(RESULT))) {
        throw new Error("not the result");
      }
      return found;
    },
  },
  {
    name: "list of a results folder",
    share: 2,
    bases: () => {
      const files = Object.fromEntries(
        Object.entries(OWN).map(([name, text]) => [name, hex(text)]),
      );
      const text = JSON.stringify({ about: "x", run: "0123abcd", files }, null, 2);
      return Promise.resolve([{ name: "written.json", text }]);
    },
    read: publishOver,
  },
  {
    name: "command line",
    share: 2,
    bases: () => Promise.resolve(COMMAND_LINES.map((text) => ({ name: "words", text }))),
    named: false,
    read: async (path) => {
      const words = (await Deno.readTextFile(path)).split("\n");
      readCommandLine(SPEC, words);
      if (words[0]!.includes("/")) findShard({ shard: words[0] }, () => undefined);
      return null;
    },
  },
];
