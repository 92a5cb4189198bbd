/**
 * `deno task bench`: runs the benchmarks.
 *
 * @module
 */
import { join } from "node:path";
import type { CommandSpec } from "./command_line.ts";
import { CommandFailure, PROJECT_FOLDER, runCommand } from "./terminal.ts";

const SPEC: CommandSpec = {
  name: "bench",
  summary: "Runs the benchmarks of tests/bench.",
  args: "",
  minArgs: 0,
  maxArgs: 0,
  options: [],
};

async function runBenchmarks(): Promise<number> {
  const folder = join(PROJECT_FOLDER, "tests", "bench");
  if (!await Deno.stat(folder).then((found) => found.isDirectory, () => false)) {
    throw new CommandFailure("There are no benchmarks yet: the folder tests/bench is missing", 2);
  }
  const { code } = await new Deno.Command(Deno.execPath(), {
    args: ["bench", "-A", folder],
    stdin: "null",
  }).spawn().status;
  return code;
}

if (import.meta.main) await runCommand(SPEC, runBenchmarks);
