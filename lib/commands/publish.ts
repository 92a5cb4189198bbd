/**
 * `deno task publish`: not there yet.
 *
 * @module
 */
import type { CommandSpec } from "./command_line.ts";
import { CommandFailure, runCommand } from "./terminal.ts";

const SPEC: CommandSpec = {
  name: "publish",
  summary: "Writes the lessons as a static site. Not available yet.",
  args: "",
  minArgs: 0,
  maxArgs: 100,
  options: [],
};

function refuse(): Promise<never> {
  return Promise.reject(
    new CommandFailure("deno task publish is not available yet; nothing was done", 2),
  );
}

if (import.meta.main) await runCommand(SPEC, refuse);
