import {
  assert,
  assertEquals,
  assertMatch,
  assertRejects,
  assertStringIncludes,
} from "@std/assert";
import { NotebookFailure, pressNotebooks } from "winterground/commands/press_notebooks.ts";
import { parseNotebook } from "winterground/press/mod.ts";
import { IMPORT_SHOW, tinyNotebook, withFolder, writeNotebook } from "../press/tiny.ts";

Deno.test("pressNotebooks() writes each notebook it ran, stops at the first fault and says where", async () => {
  // Property: outputs before the fault are on disk, the message leads to the cell
  await withFolder(async (folder) => {
    const sources = [
      tinyNotebook(IMPORT_SHOW, 'await show("first");'),
      tinyNotebook("# Text", `${IMPORT_SHOW}\nawait show("second");`, "throw new Error('cold');"),
      tinyNotebook("const never = 1;"),
    ];
    const files = await Promise.all(sources.map(async (notebook, number) => {
      const name = `0${number}-tiny`;
      return { name, number, path: await writeNotebook(folder, `${name}.ipynb`, notebook) };
    }));
    const target = await Deno.makeTempDir();
    const error = await assertRejects(() =>
      pressNotebooks({
        files,
        target,
        environment: {},
        cellLimit: 20,
        signal: new AbortController().signal,
      }), NotebookFailure);
    assertMatch(
      error.message,
      /01-tiny\.ipynb: cell 3 \[2\]: Error: cold\n {2}1 \| throw new Error/,
    );
    assertEquals(error.status, 1);
    const written = [...Deno.readDirSync(target)].map((entry) => entry.name).sort();
    assertEquals(written, ["00-tiny.ipynb", "01-tiny.ipynb"]);
    for (const [name, text] of [["00-tiny", "first"], ["01-tiny", "second"]]) {
      const content = await Deno.readTextFile(`${target}/${name}.ipynb`);
      assertStringIncludes(content, `"${text}"`);
      const cells = parseNotebook(content, name!).cells;
      assert(cells.some((cell) => cell.cell_type === "code" && cell.outputs.length === 1));
    }
    await Deno.remove(target, { recursive: true });
  });
});

Deno.test("pressNotebooks() waits for what each notebook needs, and gives them in order", async () => {
  // Property: two side by side, the second ready first
  await withFolder(async (folder) => {
    const files = await Promise.all([0, 1].map(async (number) => {
      const name = `0${number}-tiny`;
      const notebook = tinyNotebook(`${IMPORT_SHOW}\nawait show("${number}");`);
      return { name, number, path: await writeNotebook(folder, `${name}.ipynb`, notebook) };
    }));
    const target = await Deno.makeTempDir();
    const done: string[] = [];
    const first = Promise.withResolvers<void>();
    const pressed = await pressNotebooks({
      files,
      target,
      environment: {},
      cellLimit: 20,
      signal: new AbortController().signal,
      lanes: 2,
      ready: ({ number }) => number === 0 ? first.promise : Promise.resolve(),
      progress: {
        done: (name) => {
          done.push(name);
          first.resolve();
        },
        part: () => {},
        show: () => {},
        stop: () => {},
      },
    });
    assertEquals(done, ["01-tiny", "00-tiny"]);
    assertEquals(pressed.map(({ name }) => name), ["00-tiny", "01-tiny"]);
    await Deno.remove(target, { recursive: true });
  });
});
