import { assert, assertEquals, assertRejects, assertStringIncludes } from "@std/assert";
import {
  type CodeCell,
  formatNotebook,
  type Notebook,
  type NotebookRun,
  parseNotebook,
  runNotebook,
  type RunOptions,
} from "winterground/press/mod.ts";
import { HANDED_ON } from "winterground/press/environment.ts";
import { IMPORT_SHOW, runningKernels, tinyNotebook, withFolder, writeNotebook } from "../tiny.ts";

async function run(notebook: Notebook, options: Partial<RunOptions> = {}): Promise<NotebookRun> {
  return await withFolder((folder) =>
    runNotebook(notebook, { path: `${folder}/tiny.ipynb`, cellLimit: 20, ...options })
  );
}

function codeCells(result: NotebookRun): CodeCell[] {
  return result.notebook.cells.filter((cell) => cell.cell_type === "code");
}

Deno.test("runNotebook() keeps every output, in order, and a valid notebook comes out twice the same", async () => {
  // Property: outputs in = outputs out; the run is deterministic
  const notebook = tinyNotebook(
    "# Title",
    `${IMPORT_SHOW}\nconst a = 3;`,
    'await show(`a is ${a}`);\nawait show({ "text/plain": "b", "text/html": "<b>b</b>" }, "c");',
    'const large = "x".repeat(400_000);\nawait show(large);',
    "await show(`${Deno.env.get('TZ')} ${new Date(0).getHours()}`);",
  );
  const first = await run(notebook);
  assertEquals(first.failure, undefined);
  const cells = codeCells(first);
  assertEquals(cells.map((cell) => cell.execution_count), [1, 2, 3, 4]);
  assertEquals(cells.map((cell) => cell.outputs.length), [0, 3, 1, 1]);
  assertEquals(cells[1]?.outputs[1], {
    output_type: "display_data",
    data: { "text/plain": "b", "text/html": "<b>b</b>" },
    metadata: {},
  });
  assertEquals(plain(cells[2]).length, 400_000);
  assertEquals(plain(cells[3]), "UTC 0");
  const text = formatNotebook(first.notebook);
  assertEquals(parseNotebook(text, "tiny.ipynb"), first.notebook);
  assertEquals(formatNotebook((await run(notebook)).notebook), text);
});

function plain(cell: CodeCell | undefined): string {
  const output = cell?.outputs[0];
  assert(output?.output_type === "display_data");
  return String(output.data["text/plain"]);
}

Deno.test("runNotebook() gives the kernel a clean environment and the caller's additions", async () => {
  // Property: only named variables pass
  Deno.env.set("UNRELATED_SETTING", "secret");
  const result = await run(
    tinyNotebook(
      IMPORT_SHOW,
      'await show(`${Deno.env.get("UNRELATED_SETTING")} ${Deno.env.get("WINTERGROUND_STUDY")}`);',
    ),
    { environment: { WINTERGROUND_STUDY: "farm.yaml" } },
  );
  Deno.env.delete("UNRELATED_SETTING");
  assertEquals(plain(codeCells(result)[1]), "undefined farm.yaml");
});

Deno.test("a cell sees no variable of the press but those a kernel needs", async () => {
  // Property: keys and tokens of the surroundings stay there, whatever they are called
  const secrets = ["AWS_SECRET_ACCESS_KEY", "NPM_TOKEN", "WINTERGROUND_TOKEN", "DENO_AUTH_TOKENS"];
  for (const name of secrets) Deno.env.set(name, "made-up-secret");
  const result = await run(tinyNotebook(
    IMPORT_SHOW,
    "await show(JSON.stringify(Deno.env.toObject()));",
  ));
  for (const name of secrets) Deno.env.delete(name);
  const seen = plain(codeCells(result)[1]);
  assert(!seen.includes("made-up-secret"), seen);
  const known = [...HANDED_ON, "TZ", "NO_COLOR", "DENO_NO_UPDATE_CHECK"] as readonly string[];
  assertEquals(Object.keys(JSON.parse(seen)).filter((name) => !known.includes(name)), []);
});

Deno.test("runNotebook() stops at a failing cell, names it and keeps the outputs before it", async () => {
  // Property: position, code and error of the fault
  const code = 'const x = 1;\nthrow new RangeError("too cold");';
  const result = await run(
    tinyNotebook("# Text", IMPORT_SHOW, 'await show("kept");', code, 'await show("never");'),
  );
  assertEquals(result.failure?.kind, "error");
  assertEquals(result.failure?.cell, 4);
  assertEquals(result.failure?.codeCell, 3);
  assertEquals(result.failure?.code, code);
  assertEquals(result.failure?.message, "RangeError: too cold");
  const cells = codeCells(result);
  assertEquals(plain(cells[1]), "kept");
  assertEquals(cells[2]?.outputs[0]?.output_type, "error");
  assertEquals(cells[3]?.execution_count, null);
});

Deno.test("runNotebook() says where code does not parse", async () => {
  // Property: position of the fault
  const result = await run(tinyNotebook("const a = 1;\nconst b = (;"));
  assertEquals(result.failure?.kind, "error");
  assertStringIncludes(result.failure?.message ?? "", "SyntaxError");
  assertStringIncludes(result.failure?.message ?? "", "2:");
});

Deno.test("runNotebook() ends a cell that hangs, in a loop or in a wait", async () => {
  // Property: the limit of a cell holds
  for (const code of ["while (true) {}", "await new Promise(() => setTimeout(() => {}, 1e6));"]) {
    const result = await run(tinyNotebook("const a = 1;", code), { cellLimit: 0.5 });
    assertEquals(result.failure?.kind, "hung");
    assertEquals(result.failure?.cell, 2);
    assertStringIncludes(result.failure?.message ?? "", "0.5 s");
  }
});

Deno.test("runNotebook() reports a kernel that ends by itself", async () => {
  // Property: a dead kernel is no success
  const result = await run(tinyNotebook("Deno.exit(0);"));
  assertEquals(result.failure?.kind, "died");
});

Deno.test("runNotebook() notices outputs that are fewer than the calls of show", async () => {
  // Property: outputs >= calls of `await show(`, checked against a show that swallows
  const swallowing = "const show = async (_: string) => await Promise.resolve();";
  const result = await run(tinyNotebook(swallowing, 'await show("a");'));
  assertEquals(result.failure?.kind, "lost output");
  assertStringIncludes(result.failure?.message ?? "", "0 outputs for 1 calls");
});

Deno.test("runNotebook() notices a gap in the running numbers of the outputs", async () => {
  // Property: a missing output in the middle is noticed although the count is right
  const raw = (number: number) =>
    `await Deno.jupyter.broadcast("display_data", { data: {}, metadata: {}, transient: { winterground: ${number} } });`;
  const wait = "await new Promise((done) => setTimeout(done, 20));";
  const result = await run(tinyNotebook(`${raw(1)}\n${wait}`, `${raw(3)}\n${wait}`), {
    attempts: 1,
  });
  assertEquals(result.failure?.kind, "lost output");
  assertEquals(result.failure?.cell, 2);
});

Deno.test("runNotebook() takes text on the error stream as a fault", async () => {
  // Property: warnings of libraries do not pass unseen
  const result = await run(tinyNotebook('console.error("numbers as text");'));
  assertEquals(result.failure?.kind, "warning text");
  assertStringIncludes(result.failure?.message ?? "", "numbers as text");
});

Deno.test("runNotebook() leaves no kernel behind when stopped", async () => {
  // Property: cleaning up
  const stop = new AbortController();
  setTimeout(() => stop.abort(new Error("stopped")), 1000);
  await assertRejects(
    () => run(tinyNotebook("while (true) {}"), { signal: stop.signal }),
    Error,
    "stopped",
  );
  const own = (await runningKernels()).filter((kernel) => kernel.starter === Deno.pid);
  assertEquals(own, []);
});

Deno.test("runNotebook() leaves no kernel behind when the program that runs it is killed", async () => {
  // Property: cleaning up without a chance to clean up, while a cell computes
  await withFolder(async (folder) => {
    const code = 'await Deno.writeTextFile("started", "");\nwhile (true) {}';
    const path = await writeNotebook(folder, "loop.ipynb", tinyNotebook(code));
    const program = `
      import { parseNotebook, runNotebook } from "winterground/press/mod.ts";
      const path = ${JSON.stringify(path)};
      await runNotebook(parseNotebook(await Deno.readTextFile(path), path), { path });
    `;
    await Deno.writeTextFile(`${folder}/run.ts`, program);
    const child = new Deno.Command(Deno.execPath(), {
      args: ["run", "-A", "--no-check", `${folder}/run.ts`],
      stdin: "null",
      stdout: "null",
      stderr: "null",
    }).spawn();
    const started = async () =>
      (await runningKernels()).filter((kernel) => kernel.starter === child.pid);
    const computes = () => Deno.stat(`${folder}/started`).then(() => true, () => false);
    for (let wait = 0; wait < 400 && !(await computes()); wait++) await pause(50);
    const [kernel] = await started();
    assert(kernel !== undefined, "no kernel was started");
    child.kill("SIGKILL");
    await child.status;
    const left = async () => (await runningKernels()).filter((other) => other.id === kernel.id);
    for (let wait = 0; wait < 100 && (await left()).length > 0; wait++) await pause(50);
    assertEquals(await left(), []);
  });
});

function pause(milliseconds: number): Promise<void> {
  return new Promise((done) => setTimeout(done, milliseconds));
}
