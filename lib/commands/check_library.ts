/**
 * The checks of the library's build: arrows, circles, length of files, units in doc comments.
 *
 * @module
 */
import { join, relative } from "node:path";
import { fileURLToPath } from "node:url";
import { publicModules } from "./public_modules.ts";
import { arrowFaults } from "./rules/arrows.ts";
import { circleFaults } from "./rules/circles.ts";
import { showFaults } from "./rules/display.ts";
import { type DocPages, unitFaults } from "./rules/doc_units.ts";
import { lengthFaults } from "./rules/file_length.ts";
import { modulesIn, readImports } from "./rules/import_graph.ts";
import { runDeno } from "./run_deno.ts";
import { PROJECT_FOLDER } from "./terminal.ts";

/** Imports that run back, circles of files and rooms, and sums taken into display code. */
export async function importFaults(): Promise<string[]> {
  const graph = await readImports(join(PROJECT_FOLDER, "lib"));
  const shown = await showFaults(join(PROJECT_FOLDER, "lib"));
  return [...arrowFaults(graph), ...circleFaults(graph), ...shown];
}

/** Files of the library and its tests that are long without a reason. */
export async function longFiles(): Promise<string[]> {
  const faults: string[] = [];
  for (const folder of ["lib", "tests"]) {
    for await (const path of modulesIn(join(PROJECT_FOLDER, folder))) {
      const text = await Deno.readTextFile(join(PROJECT_FOLDER, folder, path));
      faults.push(...lengthFaults(`${folder}/${path}`, text));
    }
  }
  return faults;
}

/** Numbers of the public modules whose doc comment names no unit. */
export async function unnamedUnits(signal: AbortSignal): Promise<string[]> {
  const { success, text } = await runDeno(
    ["doc", "--quiet", "--json", ...publicModules()],
    signal,
  );
  if (!success) return [text.trimEnd()];
  const shown = (address: string): string => relative(PROJECT_FOLDER, fileURLToPath(address));
  return unitFaults(JSON.parse(text) as DocPages, shown);
}
