/** The list of hashes beside a run's files, as `sha256sum -c` reads it. @module */
import { join } from "node:path";
import { filesOf, hashOfFile, MANIFEST } from "./manifest.ts";

/** Name of the list. */
export const SUMS = "SHA256SUMS";

/** Hashes, hex, by path below the folder. */
export type Sums = ReadonlyMap<string, string>;

/** Hashes all files of a folder but the lists themselves. */
export async function sumsOf(folder: string): Promise<Sums> {
  const paths = (await filesOf(folder)).filter((path) => path !== SUMS && path !== MANIFEST);
  const sums = new Map<string, string>();
  for (const path of paths) sums.set(path, await hashOfFile(join(folder, path)));
  return sums;
}

/** Writes the list of a folder. */
export async function writeSums(folder: string): Promise<void> {
  const lines = Array.from(await sumsOf(folder), ([path, hash]) => `${hash}  ${path}\n`);
  await Deno.writeTextFile(join(folder, SUMS), lines.join(""));
}

/** The list of a folder; null where it has none, or one with a line that is none of a run's. */
export async function readSums(folder: string): Promise<Sums | null> {
  const text = await Deno.readTextFile(join(folder, SUMS)).catch(() => null);
  const lines = text?.split("\n").filter((line) => line !== "") ?? [];
  const sums = new Map<string, string>();
  for (const line of lines) {
    const [, hash, path] = /^([0-9a-f]{64}) [ *](.+)$/.exec(line) ?? [];
    if (hash === undefined || path === undefined || leadsOut(path)) return null;
    sums.set(path, hash);
  }
  return sums.size === 0 ? null : sums;
}

const leadsOut = (path: string) =>
  path.startsWith("/") || path.includes("\\") || path.split("/").includes("..");
