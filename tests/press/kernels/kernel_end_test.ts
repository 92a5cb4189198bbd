import { assert, assertEquals, assertRejects } from "@std/assert";
import { PROJECT_FOLDER } from "winterground/commands/terminal.ts";
import { runNotebook } from "winterground/press/mod.ts";
import { taskWords } from "winterground/commands/task_words.ts";
import { tinyNotebook, withFolder, writeNotebook } from "../tiny.ts";

const HAS_GROUPS = Deno.build.os !== "windows";

/** Programs with this word on their command line. */
async function running(word: string): Promise<string[]> {
  const { stdout } = await new Deno.Command("ps", { args: ["-eo", "pid=,args="] }).output();
  return new TextDecoder().decode(stdout).split("\n").filter((line) => line.includes(word));
}

async function until(true_: () => Promise<boolean>): Promise<boolean> {
  for (let wait = 0; wait < 1200; wait++) {
    if (await true_()) return true;
    await new Promise((done) => setTimeout(done, 50));
  }
  return false;
}

/** Seconds to sleep that no other test has, and a cell that starts a program which sleeps so long. */
function sleeper(): { readonly word: string; readonly cell: string } {
  const word = `9${crypto.getRandomValues(new Uint32Array(1))[0]}.5`;
  const cell = `new Deno.Command("sleep", { args: ["${word}"] }).spawn();\n` +
    `new Deno.Command("sh", { args: ["-c", "sleep ${word} & wait"] }).spawn();\n` +
    'await Deno.writeTextFile("started", "");';
  return { word, cell };
}

async function assertGone(word: string): Promise<void> {
  assert(await until(async () => (await running(word)).length === 0), `${await running(word)}`);
}

Deno.test({
  name: "what a cell started ends with the kernel, however the kernel ends",
  ignore: !HAS_GROUPS,
  fn: async () => {
    // Property: nothing is left when the notebook is done, fails, dies, hangs or is stopped
    for (
      const [last, kind] of [
        ["const done = true;", undefined],
        ['throw new Error("cold");', "error"],
        ["Deno.exit(0);", "died"],
        ["while (true) {}", "hung"],
      ] as const
    ) {
      const { word, cell } = sleeper();
      const { failure } = await withFolder((folder) =>
        runNotebook(tinyNotebook(cell, last), { path: `${folder}/a.ipynb`, cellLimit: 5 })
      );
      assertEquals(failure?.kind, kind);
      await assertGone(word);
    }
    const { word, cell } = sleeper();
    const stop = new AbortController();
    await withFolder(async (folder) => {
      const running = runNotebook(tinyNotebook(cell, "while (true) {}"), {
        path: `${folder}/a.ipynb`,
        cellLimit: 60,
        signal: stop.signal,
      });
      const refused = assertRejects(() => running, Error, "stopped");
      const there = () => Deno.stat(`${folder}/started`).then(() => true, () => false);
      assert(await until(there), "the cell did not run");
      stop.abort(new Error("stopped"));
      await refused;
    });
    await assertGone(word);
  },
});

Deno.test({
  name:
    "what a cell started ends with the program that runs the notebook, even if that is killed and may not kill by itself",
  ignore: !HAS_GROUPS,
  fn: async () => {
    // Property: nothing is left after SIGINT, SIGTERM and SIGKILL, and when the kernel dies on its own;
    // with the permissions of the task `study`
    const permissions = taskWords("study").slice(1, -1).filter((word) =>
      !word.startsWith("--deny")
    );
    for (const signal of ["SIGINT", "SIGTERM", "SIGKILL", undefined] as const) {
      await withFolder(async (folder) => {
        const { word, cell } = sleeper();
        const last = signal === undefined ? "Deno.exit(0);" : "while (true) {}";
        const path = await writeNotebook(folder, "a.ipynb", tinyNotebook(cell, last));
        await Deno.writeTextFile(
          `${folder}/run.ts`,
          `import { parseNotebook, runNotebook } from "winterground/press/mod.ts";
          import { runCommand } from "winterground/commands/terminal.ts";
          const path = ${JSON.stringify(path)};
          const notebook = parseNotebook(await Deno.readTextFile(path), path);
          const spec = { name: "a", summary: "", args: "", minArgs: 0, maxArgs: 0, options: [] };
          await runCommand(spec, async (_line, signal) => {
            await runNotebook(notebook, { path, signal });
          });`,
        );
        const child = new Deno.Command(Deno.execPath(), {
          args: ["run", "--no-check", ...permissions, `${folder}/run.ts`],
          cwd: PROJECT_FOLDER,
          stdin: "null",
          stdout: "null",
          stderr: "null",
        }).spawn();
        const there = () => Deno.stat(`${folder}/started`).then(() => true, () => false);
        assert(await until(there), "the cell did not run");
        if (signal !== undefined) {
          assert((await running(word)).length > 0, "nothing was started");
          child.kill(signal);
        }
        await child.status;
        await assertGone(word);
      });
    }
  },
});
