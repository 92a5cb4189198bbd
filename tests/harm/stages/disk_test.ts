// Property: a full or read-only disk is told in plain words, the earlier run stays whole, and with room again everything goes on.
import { assert, assertEquals, assertRejects } from "@std/assert";
import { join } from "node:path";
import { InputError } from "winterground/basics/mod.ts";
import { readManifest } from "winterground/commands/output/manifest.ts";
import { openStage } from "winterground/commands/output/stage.ts";
import { diskCache } from "winterground/study/run/cache.ts";
import { noteTrials } from "../test_attacks.ts";
import { MAY_MOUNT, mount, onDisk } from "./disk.ts";
import { goOn } from "./rows.ts";

async function fill(disk: string, room: number): Promise<void> {
  await Deno.writeFile(join(disk, "ballast"), new Uint8Array(512 * 1024)).catch(() => {});
  const { size } = await Deno.stat(join(disk, "ballast"));
  await Deno.truncate(join(disk, "ballast"), Math.max(0, size - room));
}

async function publish(target: string, mark: string, size: number): Promise<void> {
  const stage = await openStage(target);
  try {
    await Deno.writeTextFile(join(stage.folder, "results.json"), mark);
    await Deno.writeTextFile(join(stage.folder, "hourly.csv"), mark.repeat(size));
    await stage.publish();
  } finally {
    await stage.discard();
  }
}

const names = (folder: string) => [...Deno.readDirSync(folder)].map(({ name }) => name).sort();

Deno.test({
  name:
    "a disk that fills while a run is put in place keeps the old run whole, then lets the new one in",
  ignore: !MAY_MOUNT,
  fn: () =>
    onDisk(256 * 1024, async (disk) => {
      const target = join(disk, "farm");
      let refusals = 0;
      await publish(target, "old", 100);
      await Deno.writeTextFile(join(target, "notes.txt"), "mine");
      for (let room = 0; room <= 60_000; room += 4096) {
        await fill(disk, room);
        const done = await publish(target, "new", 10_000).then(() => true, () => false);
        if (!done) refusals++;
        assertEquals(await Deno.readTextFile(join(target, "notes.txt")), "mine");
        const mark = await Deno.readTextFile(join(target, "results.json"));
        assertEquals(mark, done ? "new" : "old");
        const files = (await readManifest(target))!.files;
        assertEquals(Object.keys(files).sort(), ["hourly.csv", "results.json"]);
        assertEquals(names(disk), ["ballast", "farm"], `room ${room}`);
        await Deno.remove(join(disk, "ballast"));
        await publish(target, "old", 100);
      }
      assert(refusals > 3 && refusals < 15, `${refusals} refusals`);
      await noteTrials(
        15,
        `results put on a disk with 0 to 60 kB of room, ${refusals} times too little`,
      );
    }),
});

Deno.test({
  name:
    "a disk that fills while rows are added loses none, and the sweep goes on to the same bytes",
  ignore: !MAY_MOUNT,
  fn: () =>
    onDisk(256 * 1024, async (disk) => {
      await goOn(join(disk, "whole"));
      const whole = await Deno.readTextFile(join(disk, "whole", "rows.csv"));
      for (const room of [0, 4096, 8192, 12_288]) {
        const folder = join(disk, String(room));
        await fill(disk, room);
        await goOn(folder).catch(() => {});
        await Deno.remove(join(disk, "ballast"));
        await goOn(folder);
        assertEquals(await Deno.readTextFile(join(folder, "rows.csv")), whole);
      }
      await noteTrials(4, "rows added to a disk with 0 to 12 kB of room");
    }),
});

Deno.test({
  name: "a cache on a full or read-only disk costs time only",
  ignore: !MAY_MOUNT,
  fn: () =>
    onDisk(256 * 1024, async (disk) => {
      await fill(disk, 0);
      const value = { list: new Float64Array(10_000) };
      assertEquals(await diskCache(join(disk, "cache")).get("a", () => value), value);
      assert(await mount("-o", "remount,ro", disk));
      assertEquals(await diskCache(join(disk, "cache")).get("b", () => value), value);
      await noteTrials(2, "the cache on a full and a read-only disk");
    }),
});

Deno.test({
  name: "a read-only disk is told before anything is computed, and nothing on it changes",
  ignore: !MAY_MOUNT,
  fn: () =>
    onDisk(256 * 1024, async (disk) => {
      const target = join(disk, "farm");
      await publish(target, "old", 100);
      assert(await mount("-o", "remount,ro", disk));
      for (const place of [target, join(disk, "other"), join(disk, "deep", "er")]) {
        const error = await assertRejects(() => openStage(place), InputError);
        assert(error.message.startsWith(`Cannot write to ${place}: `), error.message);
        assert(error.message.endsWith("choose another --out"), error.message);
        assert(!/os error|undefined/.test(error.message), error.message);
      }
      assertEquals(names(disk), ["farm"]);
      await noteTrials(3, "results for a read-only disk");
    }),
});
