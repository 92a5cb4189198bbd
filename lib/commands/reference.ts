/**
 * `deno task reference`: writes the pages of functions, symbols, sources and keys.
 *
 * @module
 */
import { join } from "node:path";
import { writeAtomically } from "../press/files.ts";
import type { CommandLine, CommandSpec } from "./command_line.ts";
import { referencePages } from "./reference/write_pages.ts";
import { PROJECT_FOLDER, runCommand, say } from "./terminal.ts";

const SPEC: CommandSpec = {
  name: "reference",
  summary:
    "Writes the pages made from the code: functions, symbols, sources, keys, the study schema.",
  args: "",
  minArgs: 0,
  maxArgs: 0,
  options: [],
};

async function writeReference(_line: CommandLine, signal: AbortSignal): Promise<void> {
  for (const { path, text } of await referencePages(signal)) {
    const kept = await Deno.readTextFile(join(PROJECT_FOLDER, path)).catch(() => null);
    if (kept === text) continue;
    await writeAtomically(join(PROJECT_FOLDER, path), text);
    say(`wrote ${path}`);
  }
}

if (import.meta.main) await runCommand(SPEC, writeReference);
