/**
 * `deno task kernels`: makes WebAssembly of the inner loops of the soil, after a change of their texts.
 *
 * @module
 */
import { join } from "node:path";
import wabt from "wabt";
import { writeAtomically } from "../press/files.ts";
import type { CommandSpec } from "./command_line.ts";
import { PROJECT_FOLDER, runCommand, say } from "./terminal.ts";

const SPEC: CommandSpec = {
  name: "kernels",
  summary: "Makes WebAssembly of the inner loops of the soil: a module of each .wat in lib.",
  args: "",
  minArgs: 0,
  maxArgs: 0,
  options: [],
};

const SOLVER = join("lib", "store", "solver");

/** A text with what its module exports. */
const KERNELS = [
  { folder: join(SOLVER, "reduced", "sums"), name: "sums", constant: "SUMS_BINARY" },
  { folder: join(SOLVER, "full"), name: "adi", constant: "ADI_BINARY" },
] as const;

/** A module made of a text. */
export interface KernelModule {
  /** of the module, from the project's folder */
  readonly path: string;
  /** the module as it should be */
  readonly text: string;
}

/** All of them. */
export async function kernelModules(): Promise<KernelModule[]> {
  const assembler = await wabt();
  return Promise.all(KERNELS.map(async ({ folder, name, constant }) => {
    const source = join(folder, `${name}.wat`);
    const parsed = assembler.parseWat(
      source,
      await Deno.readTextFile(join(PROJECT_FOLDER, source)),
    );
    parsed.resolveNames();
    parsed.validate();
    const { buffer } = parsed.toBinary({});
    parsed.destroy();
    const text = [
      `/** ${name}.wat made into WebAssembly by \`deno task kernels\`, base64. @module */`,
      "",
      "/** The module. */",
      `export const ${constant} =`,
      `  "${buffer.toBase64()}";`,
      "",
    ].join("\n");
    return { path: join(folder, `${name}_binary.ts`), text };
  }));
}

async function writeKernels(): Promise<void> {
  for (const { path, text } of await kernelModules()) {
    await writeAtomically(join(PROJECT_FOLDER, path), text);
    say(`wrote ${path}`);
  }
}

if (import.meta.main) await runCommand(SPEC, writeKernels);
