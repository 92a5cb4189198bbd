import { assertEquals, assertMatch } from "@std/assert";
import { join } from "node:path";
import { inTemporary } from "../harness/in_temporary.ts";
import { task } from "../harness/task.ts";

async function lesson(folder: string, ...args: readonly string[]) {
  const { code, stdout, stderr } = await task("lesson", args, folder).output();
  const [out, err] = [stdout, stderr].map((bytes) => new TextDecoder().decode(bytes));
  return { code, out: out!, err: err! };
}

Deno.test("a new lesson is sound; each fault put into it is found, with its place", async () => {
  // Property: the template passes its own check, and the check can fail in each part
  await inTemporary(async (folder) => {
    assertEquals((await lesson(folder, "new", "deep-soil", "--in", "own")).code, 0);
    const notebook = join(folder, "own", "deep-soil.ipynb");
    const exercises = join(folder, "own", "deep-soil.exercises.yaml");
    const sound = await lesson(folder, "check", "own/deep-soil.ipynb");
    assertEquals([sound.code, sound.err], [0, ""]);

    const again = await lesson(folder, "new", "deep-soil", "--in", "own");
    assertEquals(again.code, 2);
    assertMatch(again.err, /own\/deep-soil\.ipynb: .*there already/);
    assertEquals((await lesson(folder, "new", "../x")).code, 2);

    const change = async (path: string, from: string, to: string) => {
      const text = await Deno.readTextFile(path);
      assertEquals(text.split(from).length, 2, from);
      await Deno.writeTextFile(path, text.replace(from, to));
    };
    await change(notebook, 'lesson.exercise(\\"depth\\", null)', 'lesson.exercise(\\"depth\\", 3)');
    await change(notebook, "soil.profileChart(result)", "soil.profileChart(run)");
    await change(notebook, "_Time:_", "_About:_");
    await change(exercises, "sqrt(2 * a", "sqrt(1.01 * a");
    const { code, err } = await lesson(folder, "check", "own/deep-soil.ipynb");
    assertEquals(code, 1);
    assertMatch(err, /cell 8: the exercise is answered/);
    assertMatch(err, /own\/deep-soil\.ipynb: cell 6:/);
    assertMatch(err, /cell 1: expected a title/);
    assertMatch(err, /exercise "depth": the slip ".*" is told/);
  });
});
