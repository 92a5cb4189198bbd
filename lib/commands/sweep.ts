/**
 * `deno task sweep`: not there yet.
 *
 * @module
 */
import type { CommandSpec } from "./command_line.ts";
import { CommandFailure, runCommand } from "./terminal.ts";

const SPEC: CommandSpec = {
  name: "sweep",
  summary: "Runs many variants of a study. Not available yet.",
  args: "STUDY.yaml SWEEP.yaml",
  minArgs: 0,
  maxArgs: 100,
  options: [],
};

function refuse(): Promise<never> {
  return Promise.reject(
    new CommandFailure("deno task sweep is not available yet; nothing was done", 2),
  );
}

if (import.meta.main) await runCommand(SPEC, refuse);
