import { assertEquals, assertRejects } from "@std/assert";
import { join } from "node:path";
import { refreshCopies } from "winterground/commands/lab_folder.ts";
import { InputError } from "winterground/basics/mod.ts";
import { inTemporary } from "../harness/in_temporary.ts";

/** Writes originals and gives their copies' places. */
async function originals(folder: string, texts: Readonly<Record<string, string>>) {
  await Deno.mkdir(join(folder, "from"), { recursive: true });
  return await Promise.all(
    Object.entries(texts).map(async ([name, text]) => {
      const from = join(folder, "from", name);
      await Deno.writeTextFile(from, text);
      return { from, place: `notebooks/${name}` };
    }),
  );
}

Deno.test("refreshCopies() follows the originals where nobody changed a copy", () =>
  inTemporary(async (folder) => {
    // Property: a new version of the project arrives
    const lab = join(folder, "lab");
    assertEquals(await refreshCopies(lab, await originals(folder, { a: "1", b: "1" })), []);
    assertEquals(await refreshCopies(lab, await originals(folder, { a: "2", b: "1", c: "1" })), []);
    const read = (name: string) => Deno.readTextFile(join(lab, "notebooks", name));
    assertEquals([await read("a"), await read("b"), await read("c")], ["2", "1", "1"]);
  }));

Deno.test("refreshCopies() leaves a changed copy alone, and tells when it falls behind", () =>
  inTemporary(async (folder) => {
    // Property: nothing of the user's is lost, once told or twice
    const lab = join(folder, "lab");
    const mine = join(lab, "notebooks", "a");
    await refreshCopies(lab, await originals(folder, { a: "1" }));
    await Deno.writeTextFile(mine, "mine");
    assertEquals(await refreshCopies(lab, await originals(folder, { a: "1" })), []);
    for (let start = 0; start < 2; start++) {
      assertEquals(await refreshCopies(lab, await originals(folder, { a: "2" })), ["notebooks/a"]);
      assertEquals(await Deno.readTextFile(mine), "mine");
    }
    await Deno.remove(mine);
    assertEquals(await refreshCopies(lab, await originals(folder, { a: "2" })), []);
    assertEquals(await Deno.readTextFile(mine), "2");
  }));

Deno.test("refreshCopies() stays out of a folder that is somebody else's", () =>
  inTemporary(async (folder) => {
    // Property: other files are neither overwritten nor joined
    const lab = join(folder, "lab");
    await Deno.mkdir(lab);
    await Deno.writeTextFile(join(lab, "mine.txt"), "mine");
    const list = await originals(folder, { a: "1" });
    await assertRejects(() => refreshCopies(lab, list), InputError, "found other files");
    await Deno.writeTextFile(join(lab, "copies.json"), "{}");
    await assertRejects(() => refreshCopies(lab, list), InputError, "copies.json");
    assertEquals(
      await Array.fromAsync(Deno.readDir(lab), ({ name }) => name).then((n) => n.sort()),
      [
        "copies.json",
        "mine.txt",
      ],
    );
  }));
