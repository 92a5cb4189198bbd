/**
 * `deno task bench`: runs the benchmarks.
 *
 * @module
 */
import { join } from "node:path";
import type { CommandLine, CommandSpec } from "./command_line.ts";
import { CommandFailure, PROJECT_FOLDER, runCommand } from "./terminal.ts";

const SPEC: CommandSpec = {
  name: "bench",
  summary: "Runs the benchmarks of tests/bench.",
  args: "",
  minArgs: 0,
  maxArgs: 0,
  options: [{
    name: "study",
    meaning: "also time the demo study: first figure, quick run, changed tube, variants, parts",
  }, {
    name: "reference",
    meaning:
      "also time the store against scipy, in the Python that PYTHON names; without it by recorded times",
  }, {
    name: "engines",
    meaning:
      "also hold the fast engine against the full one in 48 winters; goes on where it stopped",
  }],
};

async function runBenchmarks(line: CommandLine): Promise<number> {
  const folder = join(PROJECT_FOLDER, "tests", "bench");
  if (!await Deno.stat(folder).then((found) => found.isDirectory, () => false)) {
    throw new CommandFailure("There are no benchmarks yet: the folder tests/bench is missing", 2);
  }
  const { code } = await new Deno.Command(Deno.execPath(), {
    args: ["bench", "-A", folder],
    stdin: "null",
  }).spawn().status;
  if (code !== 0) return code;
  for (
    const [name, script] of [
      ["study", "study_times.ts"],
      ["reference", "reference.ts"],
      ["engines", "engines.ts"],
    ] as const
  ) {
    if (!line.switches.has(name)) continue;
    const { code } = await new Deno.Command(Deno.execPath(), {
      args: ["run", "-A", join(folder, script)],
      stdin: "null",
    }).spawn().status;
    if (code !== 0) return code;
  }
  return 0;
}

if (import.meta.main) await runCommand(SPEC, runBenchmarks);
