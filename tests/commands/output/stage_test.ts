import { assert, assertEquals, assertRejects } from "@std/assert";
import { join } from "node:path";
import { InputError } from "winterground/basics/mod.ts";
import { readManifest } from "winterground/commands/output/manifest.ts";
import { openStage } from "winterground/commands/output/stage.ts";
import { readSums, SUMS, writeSums } from "winterground/commands/output/sums.ts";
import { inTemporary } from "../../harness/in_temporary.ts";

function tree(folder: string, prefix = ""): string[] {
  return [...Deno.readDirSync(folder)].flatMap((entry) =>
    entry.isDirectory
      ? tree(join(folder, entry.name), `${prefix}${entry.name}/`)
      : [prefix + entry.name]
  ).sort();
}

async function fill(folder: string, mark: string): Promise<void> {
  for (const name of ["results.json", "report.html", "notebooks/01-climate.ipynb"]) {
    const results = '{ "provenance": {}, "figures": {} }';
    await Deno.writeTextFile(join(folder, name), name === "results.json" ? results : mark);
  }
}

const ALL = ["notebooks/01-climate.ipynb", "report.html", "results.json", "written.json"];

Deno.test("publish() moves everything in, replaces an earlier result, leaves other files alone", async () => {
  // Property: only the entries a study writes change, nothing temporary is left
  await inTemporary(async (folder) => {
    const target = join(folder, "out", "farm");
    for (const mark of ["first", "second"]) {
      const stage = await openStage(target);
      await fill(stage.folder, mark);
      await stage.publish();
      assertEquals(await Deno.readTextFile(join(target, "report.html")), mark);
      await Deno.writeTextFile(join(target, "notes.txt"), "mine");
    }
    assertEquals(tree(join(folder, "out")), [...ALL, "notes.txt"].sort().map((n) => `farm/${n}`));
  });
});

Deno.test("a file is hashed once: the list for the next run takes the hashes that the run has written", async () => {
  // Property: both lists say the same; what has no hash yet gets one
  await inTemporary(async (folder) => {
    const stage = await openStage(join(folder, "farm"));
    await fill(stage.folder, "first");
    const hashes = await writeSums(stage.folder);
    const made = new Map(hashes).set("report.html", "0".repeat(64));
    await stage.publish(made);
    const { files } = (await readManifest(join(folder, "farm")))!;
    const { [SUMS]: ofList, ...others } = files;
    assertEquals(new Map(Object.entries(others)), made);
    assertEquals(ofList?.length, 64);
    assertEquals(await readSums(join(folder, "farm")), hashes);
  });
});

Deno.test("discard() leaves an earlier result as it was, and nothing where there was none", async () => {
  // Property: a run that ends early changes nothing
  await inTemporary(async (folder) => {
    const target = join(folder, "farm");
    const empty = await openStage(target);
    await empty.discard();
    assertEquals([...Deno.readDirSync(folder)], []);
    const first = await openStage(target);
    await fill(first.folder, "first");
    await first.publish();
    const second = await openStage(target);
    await fill(second.folder, "second");
    await second.discard();
    assertEquals(await Deno.readTextFile(join(target, "report.html")), "first");
    assertEquals(tree(folder), ALL.map((name) => `farm/${name}`));
  });
});

Deno.test("keepNotebooks() keeps a failed run, apart from an earlier complete one", async () => {
  // Property: the complete result stays whole
  const kept = ["failure.txt", "notebooks/01-climate.ipynb", "written.json"]
    .map((name) => `failed/${name}`);
  await inTemporary(async (folder) => {
    const target = join(folder, "farm");
    const failed = async () => {
      const stage = await openStage(target);
      await Deno.writeTextFile(join(stage.folder, "notebooks", "01-climate.ipynb"), "failed");
      return await stage.keepNotebooks("cell 3");
    };
    for (let run = 0; run < 2; run++) {
      assertEquals(await failed(), join(target, "failed", "notebooks"));
      assertEquals(tree(target), kept);
    }
    const stage = await openStage(target);
    await fill(stage.folder, "good");
    await stage.publish();
    assertEquals(tree(target), ALL);
    await failed();
    assertEquals(tree(folder), [...kept, ...ALL].map((name) => `farm/${name}`).sort());
    assertEquals(await Deno.readTextFile(join(target, "notebooks/01-climate.ipynb")), "good");
    assertEquals(await Deno.readTextFile(join(target, "failed", "failure.txt")), "cell 3\n");
  });
});

Deno.test("publish() carries the user's own files along and keeps aside what it would replace", async () => {
  // Property: nothing of the user's is deleted or overwritten, wherever it lies
  for (const inside of [false, true]) {
    await inTemporary(async (folder) => {
      const target = join(folder, "farm");
      const first = await openStage(target, { inside });
      await fill(first.folder, "first");
      await first.publish();
      const mine = ["notebooks/mine.ipynb", "drawings/sketch.svg", "survey/2026/plan.txt", "a.txt"];
      for (const path of [...mine, "report.html"]) {
        await Deno.mkdir(join(target, path, ".."), { recursive: true });
        await Deno.writeTextFile(join(target, path), `my ${path}`);
      }
      await Deno.mkdir(join(target, "notebooks", "empty"));
      const second = await openStage(target, { inside });
      await fill(second.folder, "second");
      const { aside } = await second.publish();
      assertEquals(aside.map(({ from }) => from), ["report.html"]);
      assertEquals(await Deno.readTextFile(join(target, aside[0]!.to)), "my report.html");
      assertEquals(await Deno.readTextFile(join(target, "report.html")), "second");
      for (const path of mine) {
        assertEquals(await Deno.readTextFile(join(target, path)), `my ${path}`);
      }
      assert((await Deno.stat(join(target, "notebooks", "empty"))).isDirectory);
      assertEquals(tree(folder), [...ALL, ...mine, aside[0]!.to].sort().map((n) => `farm/${n}`));
    });
  }
});

Deno.test("publish() keeps a file aside that has the name of one of its folders", async () => {
  // Property: nothing of the user's is deleted or overwritten, and nothing stops the run
  for (const inside of [false, true]) {
    await inTemporary(async (folder) => {
      const target = join(folder, "farm");
      const first = await openStage(target, { inside });
      await fill(first.folder, "first");
      await first.publish();
      await Deno.remove(join(target, "notebooks"), { recursive: true });
      await Deno.writeTextFile(join(target, "notebooks"), "my own");
      const second = await openStage(target, { inside });
      await fill(second.folder, "second");
      const { aside } = await second.publish();
      assertEquals(aside.map(({ from }) => from), ["notebooks"]);
      assertEquals(await Deno.readTextFile(join(target, aside[0]!.to)), "my own");
      assertEquals(tree(target), [...ALL, aside[0]!.to].sort());
    });
  }
});

Deno.test("openStage() refuses a file, and a folder that no list of a run speaks of", async () => {
  // Property: nothing of the user's is ever replaced
  await inTemporary(async (folder) => {
    await Deno.writeTextFile(join(folder, "file"), "");
    await assertRejects(() => openStage(join(folder, "file")), InputError, "it is a file");
    const own = join(folder, "own");
    await Deno.mkdir(own);
    for (
      const [name, text] of [
        ["failure.txt", "of the pump"],
        ["results.json", '{ "provenance": {}, "figures": {} }'],
        ["written.json", '{ "about": "", "run": "12345678", "files": { "../file": "00" } }'],
      ] as const
    ) {
      await Deno.writeTextFile(join(own, name), text);
      await assertRejects(() => openStage(own), InputError, 'it contains "failure.txt"');
    }
    assertEquals(tree(folder).length, 4);
  });
});

Deno.test("openStage() lets one run at a time into a folder", async () => {
  // Property: two runs never mix, and the second is told of the first
  for (const inside of [false, true]) {
    await inTemporary(async (folder) => {
      const target = join(folder, "farm");
      const first = await openStage(target, { inside });
      await assertRejects(
        () => openStage(target, { inside }),
        InputError,
        `another run is writing to it (process ${Deno.pid}, since `,
      );
      await fill(first.folder, "first");
      await first.publish();
      const second = await openStage(target, { inside });
      await second.discard();
      assertEquals(tree(target), ALL);
    });
  }
});

Deno.test("openStage() refuses a path that leads through a file, in plain words", async () => {
  // Property: wrong use, told before anything runs
  await inTemporary(async (folder) => {
    await Deno.writeTextFile(join(folder, "file"), "x");
    await assertRejects(
      () => openStage(join(folder, "file", "below")),
      InputError,
      "part of the path is a file; choose another --out",
    );
    assertEquals(tree(folder), ["file"]);
  });
});

Deno.test("openStage() needs no place beside a folder that is there", async () => {
  // Property: the folder may be all that may be written to, or a disk of its own
  await inTemporary(async (folder) => {
    const target = join(folder, "results");
    await Deno.mkdir(target);
    const stage = await openStage(target, { inside: true });
    assertEquals([...Deno.readDirSync(folder)].map((entry) => entry.name), ["results"]);
    await fill(stage.folder, "whole");
    await stage.publish();
    assertEquals(tree(folder), ALL.map((name) => `results/${name}`));
  });
});
