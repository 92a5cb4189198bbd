import { assert, assertEquals, assertRejects } from "@std/assert";
import { join } from "node:path";
import { computeOutputs } from "winterground/commands/compute_outputs.ts";
import { CommandFailure } from "winterground/commands/terminal.ts";

Deno.test("computeOutputs() says in plain words why a study cannot be computed, and writes nothing", async () => {
  // Property: exit status 1, no name of an error class before a message made for the user
  const folder = await Deno.makeTempDir();
  try {
    const path = join(folder, "absent.yaml");
    const failure = await assertRejects(
      () => computeOutputs({ path, folder }, new AbortController().signal),
      CommandFailure,
    );
    assertEquals((failure as CommandFailure).status, 1);
    assert(failure.message.includes("the study cannot be computed"), failure.message);
    assert(!failure.message.includes("InputError"), failure.message);
    assertEquals([...Deno.readDirSync(folder)], []);
  } finally {
    await Deno.remove(folder, { recursive: true });
  }
});
