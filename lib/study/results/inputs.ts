/** Writes the inputs of a run beside its results, to the byte as they were given. @module */
import { createHash } from "node:crypto";
import { dirname, join } from "node:path";
import type { GivenFile } from "../file/given_file.ts";
import { inputPlaces, MOVED_LIST, movedList } from "../file/kept_inputs.ts";
import type { Study } from "../types.ts";

/** Folder of the inputs in the folder of a run. */
export const INPUTS = "inputs";

/** SHA-256, hex, of each file of a study by its place in the folder of a run. */
export function inputHashes(files: readonly GivenFile[]): Readonly<Record<string, string>> {
  return Object.fromEntries(
    inputPlaces(files).map(({ file, place }) => [
      `${INPUTS}/${place}`,
      createHash("sha256").update(file.bytes).digest("hex"),
    ]),
  );
}

/**
 * Place in the folder of a run of the file that was named in a way.
 *
 * @param by key, option, or "study"
 * @returns undefined where none was
 */
export function keptAt(files: readonly GivenFile[], by: string): string | undefined {
  const kept = inputPlaces(files).find(({ file }) => file.by === by);
  return kept && `${INPUTS}/${kept.place}`;
}

/** Writes the files of a study into `inputs`, so that the copy of the study opens from there. */
export async function writeInputs({ files }: Study, folder: string): Promise<void> {
  const kept = inputPlaces(files);
  for (const { file, place } of kept) {
    const path = join(folder, INPUTS, place);
    await Deno.mkdir(dirname(path), { recursive: true });
    await Deno.writeFile(path, file.bytes);
  }
  const list = movedList(kept);
  if (list !== null) await Deno.writeTextFile(join(folder, INPUTS, MOVED_LIST), list);
}
