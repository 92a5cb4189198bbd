/**
 * The folder JupyterLab works in: copies of notebooks and demo that a person may change, refreshed as
 * long as nobody has.
 *
 * @module
 */
import { dirname, join, relative } from "node:path";
import { z } from "zod";
import { InputError } from "../basics/mod.ts";
import { hashOfFile } from "./output/manifest.ts";

/** Name of the list of copies in the folder. */
const COPIES = "copies.json";
const SCHEMA = z.object({
  about: z.string(),
  copies: z.record(z.string(), z.string().regex(/^[0-9a-f]{64}$/)),
});
/** SHA-256, hex, of what was copied last, by place. */
type Copies = Readonly<Record<string, string>>;

/** A file and its place among the copies, with `/` between its parts. */
export interface Original {
  readonly from: string;
  readonly place: string;
}

/**
 * Copies files into a working folder. A copy that was made before and has changed since stays as it
 * is, and so does any other file; copies that nobody changed follow their originals.
 *
 * @param folder made where it is not there
 * @param originals what to copy
 * @returns places of changed copies whose originals have changed too
 * @throws {InputError} where the folder was not made by this task
 */
export async function refreshCopies(
  folder: string,
  originals: readonly Original[],
): Promise<readonly string[]> {
  const known = await readCopies(folder);
  if (known === null && !await isEmpty(folder)) {
    throw new InputError(
      `Cannot work in ${folder}: expected no such folder or one made by deno task lab ` +
        `(with ${COPIES} in it), found other files; move them away`,
    );
  }
  const hashes: Record<string, string> = { ...known };
  const behind: string[] = [];
  for (const { from, place } of originals) {
    const copy = join(folder, place);
    const [fresh, found] = [await hashOfFile(from), await hashOrNull(copy)];
    const before = known?.[place];
    if (found === fresh) {
      hashes[place] = fresh;
    } else if (found === null || found === before) {
      await Deno.mkdir(dirname(copy), { recursive: true });
      await Deno.copyFile(from, copy);
      hashes[place] = fresh;
    } else if (before !== fresh) {
      behind.push(place);
    }
  }
  await Deno.mkdir(folder, { recursive: true });
  const about = "Copied by deno task lab. The next start replaces copies that nobody changed.";
  const list = JSON.stringify({ about, copies: hashes }, null, 2);
  await Deno.writeTextFile(join(folder, COPIES), `${list}\n`);
  return behind;
}

async function readCopies(folder: string): Promise<Copies | null> {
  const text = await Deno.readTextFile(join(folder, COPIES)).catch((error) => {
    if (error instanceof Deno.errors.NotFound) return null;
    throw error;
  });
  if (text === null) return null;
  try {
    return SCHEMA.parse(JSON.parse(text)).copies;
  } catch {
    throw new InputError(
      `Cannot read ${join(folder, COPIES)}, the list of copies that deno task lab made: ` +
        "move the folder away, and your changed notebooks with it",
    );
  }
}

async function isEmpty(folder: string): Promise<boolean> {
  const entries = await Array.fromAsync(Deno.readDir(folder)).catch((error) => {
    if (error instanceof Deno.errors.NotFound) return [];
    throw error;
  });
  return entries.length === 0;
}

function hashOrNull(path: string): Promise<string | null> {
  return hashOfFile(path).catch((error) => {
    if (error instanceof Deno.errors.NotFound) return null;
    throw error;
  });
}

/** The files of a folder that a person reads or runs, as originals below a place. */
export async function originalsIn(
  folder: string,
  place: string,
  wanted: RegExp,
): Promise<Original[]> {
  const entries = await Array.fromAsync(Deno.readDir(folder));
  return entries.filter(({ isFile, name }) => isFile && wanted.test(name))
    .map(({ name }) => ({ from: join(folder, name), place: `${place}/${name}` }))
    .sort((a, b) => a.place < b.place ? -1 : 1);
}

/** Files below a folder as originals that lie to each other as they do there. */
export function originalsBelow(
  paths: readonly string[],
  folder: string,
  place: string,
): Original[] {
  return paths.map((from) => ({
    from,
    place: [place, ...relative(folder, from).split(/[\\/]/)].join("/"),
  }));
}
