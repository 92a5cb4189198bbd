/**
 * `deno task test`: runs every test and ends with one plain line, "N passed, N failed".
 *
 * @module
 */
import { InputError } from "../basics/mod.ts";
import { endChild } from "../press/end_child.ts";
import type { CommandLine, CommandSpec } from "./command_line.ts";
import { complain, PROJECT_FOLDER, runCommand, say } from "./terminal.ts";

const SPEC: CommandSpec = {
  name: "test",
  summary: "Runs the tests.",
  args: "[FILE or FOLDER ...]",
  minArgs: 0,
  maxArgs: 100,
  options: [
    { name: "filter", value: "TEXT", meaning: "run only tests whose name contains this text" },
  ],
  notes: [
    "Each file of tests that runs notebooks has a process of its own.",
    "Tests against open data run if OPEN_DATA names its folder and are skipped otherwise.",
  ],
};

/** Counts of a test run. */
export interface TestCounts {
  /** tests that passed */
  readonly passed: number;
  /** tests that failed */
  readonly failed: number;
}

/**
 * Counts of the last summary line of the test runner.
 *
 * @example
 * ```ts
 * import { assertEquals } from "@std/assert";
 * import { readCounts } from "./test.ts";
 *
 * const output = "ok | 20 passed (3 steps) | 0 failed | 2 ignored (9s)";
 * assertEquals(readCounts(output), { passed: 20, failed: 0 });
 * assertEquals(readCounts("error: module not found"), undefined);
 * ```
 */
export function readCounts(output: string): TestCounts | undefined {
  const summary = /^(?:ok|FAILED) \| (\d+) passed(?: \([^)]*\))? \| (\d+) failed/gm;
  const last = [...output.matchAll(summary)].at(-1);
  if (last === undefined) return undefined;
  return { passed: Number(last[1]), failed: Number(last[2]) };
}

/** Where the tests lie that run kernels: each file has a process of its own. */
const KERNEL_TESTS = `${PROJECT_FOLDER}tests/press/kernels/`;

/** One start of the test runner. */
interface Batch {
  /** what it runs, as the last line names it where it does not finish */
  readonly name: string;
  /** words after `deno test` */
  readonly args: readonly string[];
}

/**
 * Everything side by side in one process, and each file that runs kernels alone: the addon that talks
 * to them can take down a process in which other workers end.
 */
async function batchesOf(chosen: readonly string[], filter: readonly string[]): Promise<Batch[]> {
  const paths = await Promise.all(chosen.map((path) => Deno.realPath(path)));
  const kernels = await Deno.realPath(KERNEL_TESTS);
  const files = (await Array.fromAsync(Deno.readDir(kernels)))
    .map(({ name }) => `${kernels}/${name}`)
    .filter((file) => file.endsWith("_test.ts"))
    .filter((file) => paths.some((path) => file === path || file.startsWith(`${path}/`)))
    .sort();
  const others = paths.filter((path) => path !== kernels && !path.startsWith(`${kernels}/`));
  const ignore = files.length > 0 ? [`--ignore=${kernels}`] : [];
  return [
    ...others.length === 0 ? [] : [{
      name: "the tests",
      args: ["--parallel", "--permit-no-files", ...ignore, ...filter, ...others],
    }],
    ...files.map((file) => ({
      name: `the tests of ${file.slice(kernels.length + 1)}`,
      args: [...filter, file],
    })),
  ];
}

async function runBatch({ args }: Batch, signal: AbortSignal) {
  const child = new Deno.Command(Deno.execPath(), {
    args: ["test", "-A", ...args],
    env: { NO_COLOR: "1", DENO_NO_UPDATE_CHECK: "1" },
    stdin: "null",
    stdout: "piped",
    stderr: "piped",
  }).spawn();
  const stop = (): void => endChild(child, "SIGTERM");
  signal.addEventListener("abort", stop);
  let output = "";
  const pass = async (from: ReadableStream<Uint8Array>, to: typeof Deno.stdout): Promise<void> => {
    const decoder = new TextDecoder();
    for await (const chunk of from) {
      to.writeSync(chunk);
      output += decoder.decode(chunk, { stream: true });
    }
  };
  await Promise.all([pass(child.stdout, Deno.stdout), pass(child.stderr, Deno.stderr)]);
  const { code } = await child.status;
  signal.removeEventListener("abort", stop);
  return { code, counts: readCounts(output) };
}

async function runTests(line: CommandLine, signal: AbortSignal): Promise<number> {
  for (const path of line.args) {
    await Deno.stat(path).catch(() => {
      throw new InputError(`Cannot find the tests "${path}": there is no such file or folder`);
    });
  }
  const chosen = line.args.length > 0 ? line.args : [`${PROJECT_FOLDER}tests/`];
  const filter = line.values.filter === undefined ? [] : [`--filter=${line.values.filter}`];
  const sum = { passed: 0, failed: 0 };
  let status = 0;
  for (const batch of await batchesOf(chosen, filter)) {
    signal.throwIfAborted();
    const { code, counts } = await runBatch(batch, signal);
    if (counts === undefined) complain(`${batch.name} did not finish`);
    status ||= counts === undefined ? code || 1 : code;
    sum.passed += counts?.passed ?? 0;
    sum.failed += counts?.failed ?? 0;
  }
  say(`${sum.passed} passed, ${sum.failed} failed`);
  return status;
}

if (import.meta.main) await runCommand(SPEC, runTests);
