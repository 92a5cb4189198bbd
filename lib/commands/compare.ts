/**
 * `deno task compare DIR_A DIR_B`: what changed between two finished runs.
 *
 * @module
 */
import { basename, join, resolve } from "node:path";
import type { CommandLine, CommandSpec } from "./command_line.ts";
import { compareRuns, comparisonLines, readRun, writeComparison } from "./comparison.ts";
import { openStage } from "./output/stage.ts";
import { runCommand, say } from "./terminal.ts";

const SPEC: CommandSpec = {
  name: "compare",
  summary: "Sets two finished runs side by side: inputs, figures and notices that changed.",
  args: "DIR_A DIR_B",
  minArgs: 2,
  maxArgs: 2,
  options: [{
    name: "out",
    value: "DIR",
    meaning: "folder for differences.html and differences.csv (default: out/A-and-B)",
  }],
  notes: [
    "A change is that of B against A. Exit status: 0 done, 2 wrong usage or bad input.",
  ],
};

async function compare(line: CommandLine): Promise<void> {
  const [first, second] = [line.args[0]!, line.args[1]!];
  const comparison = compareRuns(await readRun(first), await readRun(second));
  for (const text of comparisonLines(comparison)) say(text);
  const names = [first, second].map((folder) => basename(resolve(folder)));
  const stage = await openStage(line.values.out ?? join("out", names.join("-and-")));
  try {
    await Deno.remove(join(stage.folder, "notebooks")); // there are none
    await writeComparison(comparison, stage.folder);
    const { folder } = await stage.publish();
    say(`done: ${join(folder, "differences.html")}`);
  } finally {
    await stage.discard();
  }
}

if (import.meta.main) await runCommand(SPEC, compare);
