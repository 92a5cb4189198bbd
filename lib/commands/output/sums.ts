/** The list of hashes beside a run's files, as `sha256sum -c` reads it. @module */
import { join } from "node:path";
import { readTextIfThere } from "../../study/file/read_text.ts";
import { filesOf, type Hashes, hashOfFile, MANIFEST } from "./manifest.ts";

/** Name of the list. */
export const SUMS = "SHA256SUMS";

/** Hashes all ordinary files of a folder but the lists themselves; a pipe, say, would never end. */
export async function sumsOf(folder: string): Promise<Hashes> {
  const paths = (await filesOf(folder)).filter((path) => path !== SUMS && path !== MANIFEST);
  const sums = new Map<string, string>();
  for (const path of paths) {
    const file = join(folder, path);
    if ((await Deno.lstat(file)).isFile) sums.set(path, await hashOfFile(file));
  }
  return sums;
}

/** Writes the list of a folder and gives the hashes. */
export async function writeSums(folder: string): Promise<Hashes> {
  const sums = await sumsOf(folder);
  const lines = Array.from(sums, ([path, hash]) => `${hash}  ${path}\n`);
  await Deno.writeTextFile(join(folder, SUMS), lines.join(""));
  return sums;
}

/** The list of a folder; null where it has none, or one with a line that is none of a run's. */
export async function readSums(folder: string): Promise<Hashes | null> {
  const text = await readTextIfThere(join(folder, SUMS), "list of hashes").catch(() => null);
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
