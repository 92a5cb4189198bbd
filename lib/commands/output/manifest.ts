/**
 * The list of what a run wrote into a folder, with hashes, so that a later run replaces those files
 * and no others.
 *
 * @module
 */
import { createHash } from "node:crypto";
import { join } from "node:path";
import { z } from "zod";
import { readTextIfThere } from "../../study/file/read_text.ts";

/** Name of the list in the folder it is of. */
export const MANIFEST = "written.json";
/** Folder in the results folder for the notebooks of a run that failed, with a list of its own. */
export const FAILED = "failed";

const inFolder = (path: string) =>
  path !== "" && !path.startsWith("/") && !path.includes("\\") &&
  path.split("/").every((part) => part !== "" && part !== "." && part !== "..");

const SCHEMA = z.object({
  about: z.string(),
  run: z.string().regex(/^[0-9a-f]{8}$/),
  files: z.record(z.string().refine(inFolder), z.string().regex(/^[0-9a-f]{64}$/)),
});

/** What a run wrote. */
export interface Manifest {
  /** the run, 8 hex digits */
  readonly run: string;
  /** SHA-256, hex, by path below the folder with `/` between its parts */
  readonly files: Readonly<Record<string, string>>;
}

/** SHA-256, hex, by path below a folder. */
export type Hashes = ReadonlyMap<string, string>;

/**
 * Lists all files of a folder in it.
 *
 * @param known hashes of files that were taken already and hold
 */
export async function writeManifest(
  folder: string,
  run: string,
  known: Hashes = new Map(),
): Promise<void> {
  const files: Record<string, string> = {};
  for (const path of await filesOf(folder)) {
    if (path !== MANIFEST) files[path] = known.get(path) ?? await hashOfFile(join(folder, path));
  }
  const about = "Written by Winterground. A later run replaces these files while their hashes " +
    "hold; it deletes no others.";
  await Deno.writeTextFile(
    join(folder, MANIFEST),
    JSON.stringify({ about, run, files }, null, 2) + "\n",
  );
}

/** The list of a folder; null where it has none that can be read. */
export async function readManifest(folder: string): Promise<Manifest | null> {
  const text = await readTextIfThere(join(folder, MANIFEST), "list of a run").catch(() => null);
  if (text === null) return null;
  try {
    return SCHEMA.parse(JSON.parse(text));
  } catch {
    return null;
  }
}

/** Paths of all files of a folder and those below, sorted; links count as files. */
export async function filesOf(folder: string, prefix = ""): Promise<string[]> {
  const found: string[] = [];
  for await (const { name, isDirectory } of Deno.readDir(join(folder, prefix))) {
    const path = prefix + name;
    if (isDirectory) found.push(...await filesOf(folder, `${path}/`));
    else found.push(path);
  }
  return found.sort();
}

/** Whether a file is still what a run wrote. */
export async function isUnchanged(path: string, hash: string | undefined): Promise<boolean> {
  if (hash === undefined) return false;
  const found = await Deno.lstat(path).catch(() => null);
  return found?.isFile === true && await hashOfFile(path) === hash;
}

/** SHA-256, hex, of a file's content. */
export async function hashOfFile(path: string): Promise<string> {
  const hash = createHash("sha256");
  using file = await Deno.open(path);
  for await (const piece of file.readable) hash.update(piece);
  return hash.digest("hex");
}
