import { assertEquals, assertRejects } from "@std/assert";
import { join } from "node:path";
import { InputError } from "winterground/basics/mod.ts";
import { readManifest } from "winterground/commands/output/manifest.ts";
import { readSums, SUMS, sumsOf } from "winterground/commands/output/sums.ts";
import { MOVED_LIST } from "winterground/study/file/kept_inputs.ts";
import { openStudyText } from "winterground/study/mod.ts";
import { readTextFile, readTextIfThere } from "winterground/study/file/read_text.ts";
import { findManifest, readRows } from "winterground/study/sweep/mod.ts";
import { inTemporary } from "../harness/in_temporary.ts";

Deno.test({
  name: "readTextFile() refuses at once what is no ordinary file, or far too large for what it is",
  // Property: nothing that never ends, or fills the memory, is read
  ignore: Deno.build.os === "windows",
  async fn() {
    const folder = await Deno.makeTempDir();
    using _socket = Deno.listen({ transport: "unix", path: join(folder, "socket") });
    try {
      await new Deno.Command("mkfifo", { args: [join(folder, "pipe")] }).output();
      for (const name of ["settings", "table"]) {
        const path = join(folder, `huge-${name}`);
        await Deno.writeTextFile(path, "a: 1\n");
        await Deno.truncate(path, 5e9);
      }
      const cases = [
        [join(folder, "pipe"), "table", "it is a pipe, a device or a socket"],
        [join(folder, "socket"), "table", "it is a pipe, a device or a socket"],
        ["/dev/zero", "settings", "it is a pipe, a device or a socket"],
        [folder, "table", "it is a folder"],
        [join(folder, "huge-table"), "table", "it is larger than 200 MB"],
        [join(folder, "huge-settings"), "settings", "it is larger than 1 MB"],
      ] as const;
      for (const [path, kind, words] of cases) {
        await assertRejects(() => readTextFile(path, "climate file", kind), InputError, words);
      }
    } finally {
      await Deno.remove(folder, { recursive: true });
    }
  },
});

Deno.test({
  name: "readTextFile() stops where a file gives more than its size says",
  // Property: the limit is on what is read, not on what the file system tells
  ignore: Deno.build.os !== "linux",
  async fn() {
    // sysfs and procfs files say 0 bytes; this one holds more than that
    await assertRejects(
      () => readTextFile("/proc/self/maps", "study file", "settings", { settings: 100, table: 0 }),
      InputError,
      "it is larger than",
    );
  },
});

Deno.test({
  name:
    "a pipe in the place of a list, of rows or among results is refused or passed over, not waited for",
  // Property: nothing that never ends is read, where no person named it either
  ignore: Deno.build.os === "windows",
  fn: () =>
    inTemporary(async (folder) => {
      const names = [MOVED_LIST, "sweep.json", "rows.csv", "written.json", SUMS];
      await new Deno.Command("mkfifo", { args: names.map((name) => join(folder, name)) }).output();
      const pipe = "it is a pipe, a device or a socket";
      const made = { study: "a", sweep: "b", library: "c" };
      const study = () => openStudyText("house: {}\n", join(folder, "a.yaml"));
      await assertRejects(study, InputError, pipe);
      await assertRejects(() => findManifest(folder, made), InputError, pipe);
      await assertRejects(() => readRows(join(folder, "rows.csv"), []), InputError, pipe);
      assertEquals(await readManifest(folder), null);
      assertEquals(await readSums(folder), null);
      await Deno.writeTextFile(join(folder, "a.txt"), "a");
      assertEquals([...(await sumsOf(folder)).keys()], ["a.txt"]);
      assertEquals(await readTextIfThere(join(folder, "none"), "list"), null);
      assertEquals(await readTextIfThere(join(folder, "a.txt"), "list"), "a");
    }),
});
