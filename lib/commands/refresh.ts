/**
 * `deno task refresh`: runs the notebooks on the demo study and writes their outputs into them.
 *
 * @module
 */
import { join } from "node:path";
import { formatNotebook, parseNotebook, withLanguage, writeAtomically } from "../press/mod.ts";
import { openNotebooks, pressDemo } from "./check_notebooks.ts";
import type { CommandLine, CommandSpec } from "./command_line.ts";
import { listNotebooks, type NotebookFile, selectNotebooks } from "./notebook_files.ts";
import { writePictures } from "./pictures.ts";
import { runDeno } from "./run_deno.ts";
import { CommandFailure, runCommand, say } from "./terminal.ts";

const SPEC: CommandSpec = {
  name: "refresh",
  summary: "Formats and runs the notebooks and saves their outputs in them.",
  args: "",
  minArgs: 0,
  maxArgs: 0,
  options: [
    {
      name: "chapters",
      value: "LIST",
      meaning: "notebooks to refresh, such as 1-8 (default: all)",
    },
  ],
};

async function refresh(line: CommandLine, signal: AbortSignal): Promise<void> {
  const all = await listNotebooks();
  const { chapters } = line.values;
  const files = chapters === undefined ? all : selectNotebooks(all, chapters);
  for (const file of files) await nameLanguage(file);
  const formatting = await runDeno(["fmt", "--quiet", ...files.map((file) => file.path)], signal);
  if (!formatting.success) throw new CommandFailure(formatting.text);
  const target = await Deno.makeTempDir({ prefix: "winterground-refresh-" });
  try {
    await pressDemo(files, target, signal);
    for (const file of files) {
      const text = await Deno.readTextFile(join(target, `${file.name}.ipynb`));
      parseNotebook(text, file.path);
      await writeAtomically(file.path, text);
    }
  } finally {
    await Deno.remove(target, { recursive: true });
  }
  await writePictures(await openNotebooks(all));
  say(`refreshed: ${files.map((file) => file.name).join(", ")}`);
}

/** Names the language in a new notebook: without it the formatter leaves the code as it is. */
async function nameLanguage(file: NotebookFile): Promise<void> {
  const notebook = parseNotebook(await Deno.readTextFile(file.path), file.path);
  if (notebook.metadata.language_info !== undefined) return;
  await writeAtomically(file.path, formatNotebook(withLanguage(notebook, { name: "typescript" })));
}

if (import.meta.main) await runCommand(SPEC, refresh);
