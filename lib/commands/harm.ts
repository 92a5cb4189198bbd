/**
 * `deno task harm`: the attack on readers, files and texts that the tests try in part, whole.
 *
 * @module
 */
import { join } from "node:path";
import { InputError } from "../basics/mod.ts";
import { endChild } from "../press/end_child.ts";
import type { CommandLine, CommandSpec } from "./command_line.ts";
import { PROJECT_FOLDER, runCommand } from "./terminal.ts";

const SPEC: CommandSpec = {
  name: "harm",
  summary: "Attacks readers, results and texts, and writes what happened to docs/reliability.md.",
  args: "",
  minArgs: 0,
  maxArgs: 0,
  options: [
    {
      name: "only",
      value: "WORDS",
      meaning:
        "attacks whose name holds these words, such as study file; broken files for all readers",
    },
    {
      name: "count",
      value: "N",
      meaning: "faulty inputs for all readers together (default: 20000)",
    },
    { name: "seed", value: "S", meaning: "seed of the first input (default: 1)" },
  ],
  notes: [
    "Exit status: 0 nothing was found, 1 something was found (told with its seed), 2 wrong usage.",
  ],
};

function wholeOf(name: string, text: string): string {
  if (/^\d{1,8}$/.test(text)) return text;
  throw new InputError(`Cannot use --${name} "${text}": expected a whole number`);
}

async function attack({ values }: CommandLine, signal: AbortSignal): Promise<number> {
  const { only = "", count = "20000", seed = "1" } = values;
  const args = [only, wholeOf("count", count), wholeOf("seed", seed)];
  const child = new Deno.Command(Deno.execPath(), {
    args: ["run", "-A", join(PROJECT_FOLDER, "tests", "harm", "run.ts"), ...args],
    stdin: "null",
  }).spawn();
  signal.addEventListener("abort", () => endChild(child, "SIGTERM"));
  return (await child.status).code;
}

if (import.meta.main) await runCommand(SPEC, attack);
