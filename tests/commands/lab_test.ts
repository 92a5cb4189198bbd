import { assertEquals, assertStringIncludes } from "@std/assert";
import { join } from "node:path";
import { PROJECT_FOLDER } from "winterground/commands/terminal.ts";
import { inTemporary } from "../harness/in_temporary.ts";
import { task } from "../harness/task.ts";

const INSTALLED = await Deno.stat(join(PROJECT_FOLDER, ".venv")).then(() => true, () => false);

Deno.test({
  name: "deno task lab says what is missing where there is no Python, and makes nothing",
  ignore: INSTALLED,
  fn: () =>
    inTemporary(async (folder) => {
      // Property: a missing program is told in plain words, under the task's own permissions
      const { code, stderr } = await task("lab", ["--install-only"], folder, {
        env: { PATH: folder },
      }).output();
      const text = new TextDecoder().decode(stderr);
      assertEquals(code, 1, text);
      assertStringIncludes(text, "no Python 3.9 or later on this machine");
      assertStringIncludes(text, "deno task study");
      assertEquals(await Deno.stat(join(PROJECT_FOLDER, ".venv")).catch(() => null), null);
    }),
});
