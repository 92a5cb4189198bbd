import { assert, assertEquals, assertStringIncludes } from "@std/assert";
import { join } from "node:path";
import { PROJECT_FOLDER } from "winterground/commands/terminal.ts";
import { HANDED_ON } from "winterground/press/environment.ts";
import { inTemporary } from "../harness/in_temporary.ts";
import { TASKS, taskWords } from "winterground/commands/task_words.ts";
import { task } from "../harness/task.ts";

const PAGE = join(PROJECT_FOLDER, "docs", "permissions.md");
const RUN_DENO = `"--allow-run=$(deno eval --no-config 'console.log(Deno.execPath())')"`;

const flags = (name: string) => taskWords(name).filter((word) => word.startsWith("--"));

Deno.test("no task has every permission, and none may ask for more", () => {
  // Property: what a task may do stands in deno.json, narrowed where it can be
  for (const [name, line] of Object.entries(TASKS)) {
    const words = flags(name);
    assert(!/\s-A\b|--allow-all/.test(line), `${name} has every permission`);
    assert(words.includes("--no-prompt"), `${name} may ask`);
    assert(words.includes("--ignore-env"), `${name} stumbles over variables it may not see`);
    for (const broad of ["--allow-env", "--allow-net", "--allow-ffi", "--allow-sys"]) {
      assert(!words.includes(broad), `${name} has ${broad} for all`);
    }
    const programs = words.find((word) => word.startsWith("--allow-run"));
    if (name === "lab") assertEquals(programs, "--allow-run");
    else if (programs !== undefined) assertStringIncludes(line, RUN_DENO);
    const writes = words.includes("--allow-write");
    const spares = words.find((word) => word.startsWith("--deny-write="))?.split(/[=,]/) ?? [];
    assert(!writes || (spares.includes("lib") && spares.includes("node_modules")), name);
  }
});

Deno.test("tasks that start kernels may read exactly the variables that a kernel is given", () => {
  // Property: a new variable stands in both places
  for (const name of ["study", "check", "refresh"]) {
    const seen = flags(name).find((word) => word.startsWith("--allow-env="))!.split(/[=,]/).slice(
      1,
    );
    assertEquals(seen.toSorted(), ["INIT_CWD", ...HANDED_ON].toSorted(), name);
  }
});

Deno.test("the page of permissions names every task and each of its permissions", async () => {
  // Property: the table is that of deno.json
  const rows = (await Deno.readTextFile(PAGE)).split("\n").filter((line) => line.startsWith("| `"));
  const told = new Map(rows.map((row) => [/^\| `([^`]+)`/.exec(row)![1]!, row]));
  for (const name of Object.keys(TASKS)) {
    const row = told.get(name);
    assert(row !== undefined, `docs/permissions.md does not name ${name}`);
    for (const kind of ["read", "write", "run", "net", "ffi"]) {
      const given = flags(name).some((word) => word.startsWith(`--allow-${kind}`));
      assertEquals(row.includes(`**${kind}**`), given, `${name}: ${kind} in docs/permissions.md`);
    }
  }
});

Deno.test("every task starts with its own permissions", async () => {
  // Property: help is there for each, nothing is refused
  for (const name of Object.keys(TASKS)) {
    const { code, stderr } = await task(name, ["--help"], Deno.cwd()).output();
    assertEquals([code, new TextDecoder().decode(stderr)], [0, ""], name);
  }
});

Deno.test("a task as Deno reads it from deno.json takes file names from where its caller stands", async () => {
  // Property: the words of deno.json, through the task runner, in a folder of its own
  await inTemporary(async (folder) => {
    const { code, stderr } = await new Deno.Command(Deno.execPath(), {
      args: ["task", "--quiet", "--config", join(PROJECT_FOLDER, "deno.json"), "study", "no.yaml"],
      cwd: folder,
      env: { NO_COLOR: "1" },
      stdin: "null",
    }).output();
    assertEquals(code, 2);
    assertStringIncludes(new TextDecoder().decode(stderr), "no.yaml: Cannot find");
  });
});

Deno.test("the task test runs a test file", async () => {
  // Property: permissions are enough for the work
  const { code, stdout, stderr } = await task("test", [
    "tests/commands/time_left_test.ts",
  ], PROJECT_FOLDER).output();
  assertEquals(code, 0, new TextDecoder().decode(stderr));
  assertStringIncludes(new TextDecoder().decode(stdout), " passed, 0 failed");
});

Deno.test("the study may not write into the library, even where it is told to", async () => {
  // Property: what a run has no business to change, it cannot
  const place = join(PROJECT_FOLDER, "lib", "results");
  const { code, stderr } = await task("study", ["--quick", "--out", place], PROJECT_FOLDER)
    .output();
  assertEquals(code, 2);
  assertStringIncludes(new TextDecoder().decode(stderr), `Cannot write to ${place}`);
  assert(!await Deno.stat(place).then(() => true, () => false));
});
