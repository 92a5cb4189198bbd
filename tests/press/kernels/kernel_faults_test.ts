import { assert, assertEquals, assertMatch } from "@std/assert";
import {
  type FailureKind,
  type Notebook,
  type NotebookRun,
  runNotebook,
  type RunOptions,
} from "winterground/press/mod.ts";
import { IMPORT_SHOW, tinyNotebook, withFolder } from "../tiny.ts";

async function run(notebook: Notebook, options: Partial<RunOptions> = {}): Promise<NotebookRun> {
  return await withFolder((folder) =>
    runNotebook(notebook, { path: `${folder}/tiny.ipynb`, cellLimit: 60, ...options })
  );
}

/** A fault as a reader meets it: kind, number among the code cells, message. */
type Expected = readonly [kind: FailureKind, codeCell: number, message: RegExp];

async function assertFault(sources: readonly string[], expected: Expected): Promise<void> {
  const { failure } = await run(tinyNotebook(...sources));
  const [kind, codeCell, message] = expected;
  assertEquals([failure?.kind, failure?.codeCell], [kind, codeCell], failure?.message);
  assertMatch(failure?.message ?? "", message);
}

const LATE = 'setTimeout(() => {\n  throw new RangeError("too late");\n}, 300);';
const WAIT = "await new Promise((done) => setTimeout(done, 30_000));";

Deno.test("runNotebook() names an error thrown in a timer, and the cell that set it, while a later cell waits", async () => {
  // Property: the error ends the run, not the limit of the cell that happens to run
  await assertFault(["# Text", LATE, WAIT], [
    "stray error",
    1,
    /^RangeError: too late\n.*timer.*while cell \[2\] ran/,
  ]);
});

Deno.test("runNotebook() names an error that is thrown as the last cell ends", async () => {
  // Property: a notebook does not pass with an error under way
  for (
    const [code, message] of [
      ['setTimeout(() => {\n  throw new Error("at once");\n}, 0);', /^Error: at once\n/],
      ['process.nextTick(() => {\n  throw new TypeError("tick");\n});', /^TypeError: tick\n/],
      ['Promise.reject(new Error("no await"));', /^Error: no await\n.*promise without await/],
      ["setTimeout(() => {\n  throw null;\n}, 0);", /null/],
    ] as const
  ) await assertFault(["const a = 1;", code], ["stray error", 2, message]);
});

Deno.test("runNotebook() leaves alone a promise that is awaited, and a timer that ends well", async () => {
  // Property: no false alarm
  const { failure } = await run(tinyNotebook(
    IMPORT_SHOW,
    'const settled = await Promise.allSettled([Promise.reject(new Error("expected"))]);',
    "let count = 0;\nsetTimeout((step: number) => count += step, 5, 7);",
    "await new Promise((done) => setTimeout(done, 50));\nawait show(`${count}`);",
  ));
  assertEquals(failure, undefined);
});

Deno.test("an output beyond the bound is an error of its cell: 60 million characters, shown or printed", async () => {
  // Property: what cannot be carried is refused, never missing
  const large = '"x".repeat(60_000_000)';
  const bound = /^RangeError: .* of 60000000 characters is too large: at most \d+ are allowed/;
  await assertFault([IMPORT_SHOW, `await show(${large});`], ["error", 2, bound]);
  await assertFault([`console.log(${large});`], ["error", 1, bound]);
  await assertFault([
    `await Deno.jupyter.display({ "text/plain": ${large} }, { raw: true });`,
  ], ["error", 1, bound]);
});

Deno.test("outputs just below the bound arrive whole; too many of them in a notebook are an error", async () => {
  // Property: the stated bounds are the true ones
  const show = 'await show("x".repeat(9_999_000));';
  const { notebook, failure } = await run(tinyNotebook(IMPORT_SHOW, ...Array(7).fill(show)));
  assertEquals([failure?.kind, failure?.codeCell], ["too large", 8]);
  assertMatch(failure?.message ?? "", /at most 60000000 are allowed/);
  for (const cell of notebook.cells.slice(1)) {
    const output = cell.cell_type === "code" ? cell.outputs[0] : undefined;
    assert(output?.output_type === "display_data");
    assertEquals(String(output.data["text/plain"]).length, 9_999_000);
  }
});

Deno.test("a kernel that ends by itself says how", async () => {
  // Property: the exit status is told
  await assertFault(["Deno.exit(3);"], ["died", 1, /exit status 3/]);
});
