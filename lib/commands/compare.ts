/**
 * `deno task compare`: not there yet.
 *
 * @module
 */
import type { CommandSpec } from "./command_line.ts";
import { CommandFailure, runCommand } from "./terminal.ts";

const SPEC: CommandSpec = {
  name: "compare",
  summary:
    "Compares two results: changed inputs and changed figures, side by side. Not available yet.",
  args: "DIR_A DIR_B",
  minArgs: 0,
  maxArgs: 100,
  options: [],
};

function refuse(): Promise<never> {
  return Promise.reject(
    new CommandFailure("deno task compare is not available yet; nothing was done", 2),
  );
}

if (import.meta.main) await runCommand(SPEC, refuse);
