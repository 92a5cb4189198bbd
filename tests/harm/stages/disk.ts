/** Disks of a few kilobytes, where this process may mount them. @module */
import { assert } from "@std/assert";
import { join } from "node:path";
import { inTemporary } from "../../harness/in_temporary.ts";

/** Mounts; false where this process may not. */
export async function mount(...args: string[]): Promise<boolean> {
  const { success } = await new Deno.Command("mount", { args, stdout: "null", stderr: "null" })
    .output().catch(() => ({ success: false }));
  return success;
}

async function unmount(folder: string): Promise<void> {
  await new Deno.Command("umount", { args: ["-l", folder] }).output();
}

/** True where this process may mount a disk of its own. */
export const MAY_MOUNT = Deno.build.os === "linux" && await (async () => {
  const folder = await Deno.makeTempDir();
  const may = await mount("-t", "tmpfs", "-o", "size=64k", "tmpfs", folder);
  if (may) await unmount(folder);
  await Deno.remove(folder);
  return may;
})();

/** Work on a disk of so many bytes. */
export async function onDisk(bytes: number, work: (disk: string) => Promise<void>): Promise<void> {
  await inTemporary(async (folder) => {
    const disk = join(folder, "disk");
    await Deno.mkdir(disk);
    assert(await mount("-t", "tmpfs", "-o", `size=${bytes}`, "tmpfs", disk));
    try {
      await work(disk);
    } finally {
      await unmount(disk);
    }
  });
}
