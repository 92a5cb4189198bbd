/** Why a disk took nothing, in plain words. @module */
import { dirname, join, resolve } from "node:path";
import { InputError } from "../../basics/mod.ts";

/**
 * What a fault of the file system means to a person; null where it is none of those.
 *
 * @param error as the system gave it
 */
export function diskWords(error: unknown): string | null {
  if (error instanceof Deno.errors.PermissionDenied) return "permission denied";
  const words = wordsOf(error);
  if (words.includes("os error 30")) return "the disk is read-only";
  if (words.includes("os error 28")) return "the disk is full";
  if (words.includes("os error 122")) return "your share of the disk is used up";
  return null;
}

/** Says why nothing can be written to a folder. */
export function refuse(target: string, error: unknown): never {
  if (error instanceof InputError) throw error;
  const inTheWay = error instanceof Deno.errors.AlreadyExists ||
    error instanceof Deno.errors.NotADirectory;
  const why = inTheWay ? "part of the path is a file" : diskWords(error) ?? wordsOf(error);
  throw new InputError(`Cannot write to ${target}: ${why}; choose another --out`);
}

const wordsOf = (error: unknown) => error instanceof Error ? error.message : String(error);

/**
 * Tries to write into a folder before long work is done for it.
 *
 * @param folder where it is not there, the one that is there above it is tried
 * @throws {InputError} where nothing can be written
 */
export async function tryWriting(folder: string): Promise<void> {
  try {
    const trial = join(await nearest(resolve(folder)), `.${crypto.randomUUID()}.part`);
    await Deno.writeTextFile(trial, "");
    await Deno.remove(trial);
  } catch (error) {
    refuse(folder, error);
  }
}

/** The folder, or the first above it that is there. */
async function nearest(folder: string): Promise<string> {
  const there = await Deno.stat(folder).then(() => true, (error) => {
    if (error instanceof Deno.errors.NotFound) return false;
    throw error;
  });
  return there || dirname(folder) === folder ? folder : await nearest(dirname(folder));
}
