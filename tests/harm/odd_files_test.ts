import { assertRejects } from "@std/assert";
import { join } from "node:path";
import { InputError } from "winterground/basics/mod.ts";
import { readTextFile } from "winterground/study/file/read_text.ts";

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
