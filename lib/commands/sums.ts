/**
 * `deno task sums`: makes WebAssembly of the sums of the reduced step, after a change of sums.wat.
 *
 * @module
 */
import { join } from "node:path";
import wabt from "wabt";
import { writeAtomically } from "../press/files.ts";
import type { CommandSpec } from "./command_line.ts";
import { PROJECT_FOLDER, runCommand, say } from "./terminal.ts";

const SPEC: CommandSpec = {
  name: "sums",
  summary: "Makes sums_binary.ts of sums.wat, the sums of the soil's reduced step.",
  args: "",
  minArgs: 0,
  maxArgs: 0,
  options: [],
};

const FOLDER = join("lib", "store", "solver", "reduced", "sums");

/** Path of the module made, and its text as it should be. */
export async function sumsModuleText(): Promise<{ readonly path: string; readonly text: string }> {
  const source = join(FOLDER, "sums.wat");
  const assembler = await wabt();
  const parsed = assembler.parseWat(source, await Deno.readTextFile(join(PROJECT_FOLDER, source)));
  parsed.resolveNames();
  parsed.validate();
  const { buffer } = parsed.toBinary({});
  parsed.destroy();
  const text = [
    "/** sums.wat made into WebAssembly by `deno task sums`, base64. @module */",
    "",
    "/** The module. */",
    "export const SUMS_BINARY =",
    `  "${buffer.toBase64()}";`,
    "",
  ].join("\n");
  return { path: join(FOLDER, "sums_binary.ts"), text };
}

async function writeSums(): Promise<void> {
  const { path, text } = await sumsModuleText();
  await writeAtomically(join(PROJECT_FOLDER, path), text);
  say(`wrote ${path}`);
}

if (import.meta.main) await runCommand(SPEC, writeSums);
