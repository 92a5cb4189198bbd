import { assert, assertEquals } from "@std/assert";
import { join } from "node:path";
import { MANIFEST, readManifest } from "winterground/commands/output/manifest.ts";
import { openStage } from "winterground/commands/output/stage.ts";
import { publishSmallRun } from "./small_run.ts";

const PROGRAM = new URL("publish_and_die.ts", import.meta.url).pathname;
const MINE = {
  "notes.txt": "mine",
  "notebooks/mine.ipynb": "my own",
  "drawings/sketch.svg": "my sketch",
  "hourly.csv": "in the way of the second run",
};

/** Publishes in a process of its own; false where it was killed. */
async function publish(target: string, mark: string, call: number, place: string) {
  const child = new Deno.Command(Deno.execPath(), {
    args: ["run", "-A", "--no-check", PROGRAM, target, mark, String(call), place],
    stdin: "null",
    stderr: "piped",
  });
  const { code, signal, stderr } = await child.output();
  assert(code === 0 || signal === "SIGKILL", new TextDecoder().decode(stderr));
  return signal === null;
}

/** The mark of the run in a folder, whole; null where there is none. */
async function wholeRun(folder: string): Promise<string | null> {
  const manifest = await readManifest(folder);
  if (manifest === null) return null;
  const marks = await Promise.all(
    Object.keys(manifest.files).map((path) => Deno.readTextFile(join(folder, path))),
  );
  assertEquals(new Set(marks).size, 1, `${folder} holds ${marks}`);
  return marks[0]!;
}

function everyText(folder: string): string[] {
  return [...Deno.readDirSync(folder)].flatMap(({ name, isDirectory }) =>
    isDirectory ? everyText(join(folder, name)) : [Deno.readTextFileSync(join(folder, name))]
  );
}

/** Kills the second run at one call after another, in as many folders side by side. */
async function killEverywhere(place: string, look: (folder: string) => Promise<void>) {
  const home = await Deno.makeTempDir();
  let lived = false;
  let next = 1;
  const lane = async () => {
    while (!lived) {
      const call = next++;
      const around = join(home, String(call));
      const target = join(around, "farm");
      await publishSmallRun(target, "first", place);
      for (const [path, text] of Object.entries(MINE)) {
        await Deno.mkdir(join(target, path, ".."), { recursive: true });
        await Deno.writeTextFile(join(target, path), text);
      }
      if (await publish(target, "second", call, place)) lived = true;
      else await look(target);
      await checkAfter(around, target, place);
    }
  };
  await Promise.all([lane(), lane()]);
  await Deno.remove(home, { recursive: true });
  return next - 2;
}

async function checkAfter(around: string, target: string, place: string): Promise<void> {
  const stage = await openStage(target, { inside: place === "inside" });
  await stage.discard();
  const mark = await wholeRun(target);
  assert(mark === "first" || mark === "second", `no whole run in ${target}`);
  assertEquals([...Deno.readDirSync(around)].map(({ name }) => name), ["farm"]);
  const texts = everyText(target);
  for (const text of Object.values(MINE)) assert(texts.includes(text), `${text} is gone`);
  const manifest = (await readManifest(target))!;
  const others = everyText(target).length - Object.keys(manifest.files).length - 1;
  assertEquals(others, Object.keys(MINE).length, "nothing of the dead run is left");
}

Deno.test("killed at any call, the old run or the new one is whole beside it, and nothing of the user's is lost", async () => {
  // Property: one renaming switches; the next run finishes what was cut off
  const calls = await killEverywhere("beside", async (target) => {
    if (await Deno.stat(join(target, MANIFEST)).catch(() => null) !== null) {
      await wholeRun(target); // no mixture, at any moment
    }
  });
  assert(calls > 30, `only ${calls} calls were tried`);
});

Deno.test("killed at any call in a folder that cannot be renamed, the next run makes it whole", async () => {
  // Property: what was begun is finished
  const calls = await killEverywhere("inside", () => Promise.resolve());
  assert(calls > 30, `only ${calls} calls were tried`);
});
