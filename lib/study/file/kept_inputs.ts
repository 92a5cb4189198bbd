/**
 * Where the inputs of a study are kept with its results: files that lie beside the study file under
 * the name it gives them, all others in a folder of their own, with a list that says so.
 *
 * @module
 */
import { basename, dirname, join, normalize } from "node:path";
import { z } from "zod";
import { InputError } from "../../basics/mod.ts";
import type { GivenFile } from "./given_file.ts";
import { readTextIfThere } from "./read_text.ts";

/** Folder for files that a study names by a way that leads out of its own folder. */
export const ELSEWHERE = "elsewhere";
/** List of them, beside the copy of the study file. */
export const MOVED_LIST = "elsewhere.json";

const LIST = z.strictObject({
  about: z.string(),
  files: z.record(z.string(), z.string().regex(/^elsewhere\/\d+\/[\w.-]+$/)),
});

/** A given file and its place below the folder of the inputs, with `/` between the parts. */
export interface KeptInput {
  /** as given */
  readonly file: GivenFile;
  /** path of the copy */
  readonly place: string;
}

/**
 * Gives each file a place. The study file keeps its name; files that it names beside or below itself
 * keep theirs, so that the copy of the study finds them.
 *
 * @param files of a study, the study file first
 */
export function inputPlaces(files: readonly GivenFile[]): readonly KeptInput[] {
  const taken = new Set([MOVED_LIST, ELSEWHERE]);
  let count = 0;
  return files.map((file, k) => {
    const beside = k === 0 ? plainName(file.path) : placeBeside(file);
    const place = beside !== undefined && !hidden(beside, taken)
      ? beside
      : `${ELSEWHERE}/${++count}/${plainName(file.path)}`;
    taken.add(place.toLowerCase());
    return { file, place };
  });
}

/** True for a place that is taken by another file or by a folder of ours. */
function hidden(place: string, taken: ReadonlySet<string>): boolean {
  const low = place.toLowerCase();
  return taken.has(low) || taken.has(low.split("/")[0]!) ||
    [...taken].some((other) => other.startsWith(`${low}/`));
}

/** The name by which a study finds a file below its own folder; undefined where it leads elsewhere. */
function placeBeside({ name, path }: GivenFile): string | undefined {
  if (name === undefined) return undefined;
  const place = normalize(name).replaceAll("\\", "/");
  const plain = /^[\p{L}\p{N}_. -]+(?:\/[\p{L}\p{N}_. -]+)*$/u.test(place) &&
    place.split("/").every((part) => !part.startsWith(".."));
  return plain && path.replaceAll("\\", "/").endsWith(place) ? place : undefined;
}

/** A file name that every system takes. */
function plainName(path: string): string {
  return basename(path).replaceAll(/[^\w.-]+/g, "-").replace(/^[.-]+/, "") || "file";
}

/** The list of files kept elsewhere; null where there are none. */
export function movedList(kept: readonly KeptInput[]): string | null {
  const files = Object.fromEntries(
    kept.filter(({ file, place }) => file.name !== undefined && file.name !== place)
      .filter(({ place }) => place.startsWith(`${ELSEWHERE}/`))
      .map(({ file, place }) => [file.name, place]),
  );
  if (Object.keys(files).length === 0) return null;
  const about = "Files that the study beside this list names by a way that leads elsewhere, " +
    "and where their copies lie. Delete the list to read them where the study says.";
  return JSON.stringify({ about, files }, null, 2) + "\n";
}

/**
 * Where files lie that a study names, for the copy of a study kept with its results.
 *
 * @param path of the study file
 * @returns places relative to the study file by the name it gives; empty where no list lies beside it
 * @throws {InputError} where the list is not as a run writes it
 */
export async function movedFiles(path: string): Promise<Readonly<Record<string, string>>> {
  const file = join(dirname(path), MOVED_LIST);
  const text = await readTextIfThere(file, "list of files kept elsewhere");
  if (text === null) return {};
  try {
    return LIST.parse(JSON.parse(text)).files;
  } catch {
    throw new InputError(
      "Cannot read the list of files kept elsewhere: it is not as a run writes it; delete it to " +
        "read the files where the study says",
      { file },
    );
  }
}
