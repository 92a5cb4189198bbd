/**
 * Which file of the library imports which.
 *
 * @module
 */
import { join, posix } from "node:path";

/** Files with the files they import, by path within the library; types count like values. */
export type ImportGraph = ReadonlyMap<string, readonly string[]>;

/**
 * Imports in the text of a module that name a file beside it.
 *
 * @param path of the module within the library, such as "soil/wave.ts"
 * @param text of the module
 * @returns paths within the library
 */
export function importsOf(path: string, text: string): string[] {
  return [...text.matchAll(/(?:\bfrom|\bimport)\s*\(?\s*"(\.[^"]+\.ts)"/g)]
    .map((match) => posix.join(posix.dirname(path), match[1]!));
}

/** Reads the graph of all modules in a folder. */
export async function readImports(folder: string): Promise<ImportGraph> {
  const graph = new Map<string, string[]>();
  for await (const path of modulesIn(folder)) {
    graph.set(path, importsOf(path, await Deno.readTextFile(join(folder, path))));
  }
  return graph;
}

/** Paths of all modules in a folder and below, within the folder. */
export async function* modulesIn(folder: string, below = ""): AsyncGenerator<string> {
  for await (const entry of Deno.readDir(join(folder, below))) {
    const path = posix.join(below, entry.name);
    if (entry.isDirectory) yield* modulesIn(folder, path);
    else if (entry.name.endsWith(".ts")) yield path;
  }
}
