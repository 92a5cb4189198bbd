import { assertEquals } from "@std/assert";
import { join } from "node:path";
import { inTemporary } from "../harness/in_temporary.ts";
import { removeLeft } from "./tiny.ts";

Deno.test("a test leaves no folder below notebooks, even one that was killed", () =>
  inTemporary(async (home) => {
    // Property: folders of processes that have ended go, those of others stay
    const child = new Deno.Command(Deno.execPath(), { args: ["eval", "0"] }).spawn();
    await child.status;
    for (const name of [`.test-${child.pid}-a`, `.test-${Deno.pid}-b`, "mine", ".test-notes"]) {
      await Deno.mkdir(join(home, name));
      await Deno.writeTextFile(join(home, name, "a.ipynb"), "{}");
    }
    await removeLeft(home);
    const left = [...Deno.readDirSync(home)].map(({ name }) => name).sort();
    assertEquals(left, [".test-notes", `.test-${Deno.pid}-b`, "mine"].sort());
  }));
