import { assertEquals, assertStringIncludes } from "@std/assert";
import { join } from "node:path";
import { PROJECT_FOLDER } from "winterground/commands/terminal.ts";
import { inTemporary } from "../harness/in_temporary.ts";
import { task } from "../harness/task.ts";

/** A folder that looks like the project's as it comes, without an environment of Python. */
async function freshProject(folder: string): Promise<string> {
  const project = join(folder, "project");
  await Deno.mkdir(project);
  for (const name of ["data", "deno.json", "docs", "lib", "node_modules", "notebooks", "tests"]) {
    await Deno.symlink(join(PROJECT_FOLDER, name), join(project, name));
  }
  await Deno.copyFile(join(PROJECT_FOLDER, "deno.lock"), join(project, "deno.lock"));
  return project;
}

Deno.test("deno task lab says what is missing where there is no Python, and makes nothing", () =>
  inTemporary(async (folder) => {
    // Property: a missing program is told in plain words, under the task's own permissions
    const project = await freshProject(folder);
    const before = [...Deno.readDirSync(project)].map(({ name }) => name);
    const { code, stderr } = await task("lab", ["--install-only"], project, {
      env: { PATH: folder },
      project,
    }).output();
    const text = new TextDecoder().decode(stderr);
    assertEquals(code, 1, text);
    assertStringIncludes(text, "no Python 3.9 or later on this machine");
    assertStringIncludes(text, "deno task study");
    assertEquals([...Deno.readDirSync(project)].map(({ name }) => name).sort(), before.sort());
  }));

Deno.test("deno task lab refuses a folder in which notebooks would not find the library", () =>
  inTemporary(async (folder) => {
    // Property: told before anything is installed or written
    const { code, stderr } = await task("lab", ["--out", "here"], folder).output();
    const text = new TextDecoder().decode(stderr);
    assertEquals(code, 2, text);
    assertStringIncludes(text, join(folder, "here"));
    assertStringIncludes(text, `expected a folder in ${join(PROJECT_FOLDER, "out")}`);
    assertEquals([...Deno.readDirSync(folder)], []);
  }));
