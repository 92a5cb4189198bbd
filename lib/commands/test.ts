/**
 * `deno task test`: runs every test and ends with one plain line, "N passed, N failed".
 *
 * @module
 */
import { InputError } from "../basics/mod.ts";
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
 * Reads the counts from the last summary line of the test runner.
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

async function runTests(line: CommandLine, signal: AbortSignal): Promise<number> {
  for (const path of line.args) {
    await Deno.stat(path).catch(() => {
      throw new InputError(`Cannot find the tests "${path}": there is no such file or folder`);
    });
  }
  const chosen = line.args.length > 0 ? line.args : [`${PROJECT_FOLDER}tests/`];
  const filter = line.values.filter === undefined ? [] : [`--filter=${line.values.filter}`];
  const child = new Deno.Command(Deno.execPath(), {
    args: ["test", "-A", "--parallel", ...filter, ...chosen],
    env: { NO_COLOR: "1", DENO_NO_UPDATE_CHECK: "1" },
    stdin: "null",
    stdout: "piped",
    stderr: "piped",
  }).spawn();
  signal.addEventListener("abort", () => child.kill("SIGTERM"));
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
  const counts = readCounts(output);
  if (counts === undefined) {
    complain("the tests did not finish");
    return code || 1;
  }
  say(`${counts.passed} passed, ${counts.failed} failed`);
  return code;
}

if (import.meta.main) await runCommand(SPEC, runTests);
