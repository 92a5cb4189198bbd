/**
 * The folder a study writes to. Everything is written to a hidden folder first, beside it or in it
 * where it is there, and moved when the study is done, so a run that fails leaves nothing
 * half-written and an earlier result as it was.
 *
 * @module
 */
import { basename, dirname, join, resolve } from "node:path";
import { InputError } from "../basics/mod.ts";

/** Files by which a folder is known as one this program wrote. */
const RESULTS = "results.json";
const FAILURE = "failure.txt";
/** What a study writes; these entries of the folder are replaced, others are left alone. */
const ENTRIES = [
  RESULTS,
  FAILURE,
  "hourly.csv",
  "quantities.csv",
  "tables",
  "drawings",
  "notebooks",
  "report.html",
] as const;

/** A folder in which results wait until they are complete. */
export interface Stage {
  /** where to write */
  readonly folder: string;
  /** Moves everything into the final folder; gives its path as the user wrote it. */
  publish(): Promise<string>;
  /** Keeps the notebooks of a run that failed and says why; gives the folder they are in. */
  keepNotebooks(reason: string): Promise<string>;
  /** Removes what was written. */
  discard(): Promise<void>;
}

/**
 * Prepares to write into `target`.
 *
 * @throws {InputError} when the target is a file, or a folder whose entries of the same names were
 * not written by a study
 */
export async function openStage(target: string): Promise<Stage> {
  await checkTarget(target);
  const final = resolve(target);
  // in the folder itself where there is one: it may be all of a disk, or all that may be written to
  const home = await exists(final) ? final : dirname(final);
  const folder = join(home, `.${basename(final)}.${crypto.randomUUID().slice(0, 8)}.part`);
  await Deno.mkdir(join(folder, "notebooks"), { recursive: true }).catch((error) => {
    throw new InputError(`Cannot write to ${target}: ${reasonOf(error)}; choose another --out`);
  });
  const discard = (): Promise<void> => Deno.remove(folder, { recursive: true }).catch(() => {});

  const moveInto = async (destination: string): Promise<void> => {
    await Deno.mkdir(destination, { recursive: true });
    for (const entry of ENTRIES) {
      await Deno.remove(join(destination, entry), { recursive: true }).catch(() => {});
      await Deno.rename(join(folder, entry), join(destination, entry)).catch((error) => {
        if (!(error instanceof Deno.errors.NotFound)) throw error;
      });
    }
    await discard();
  };

  return {
    folder,
    discard,
    publish: async () => {
      await Deno.remove(join(final, "failed"), { recursive: true }).catch(() => {});
      await moveInto(final);
      return target;
    },
    keepNotebooks: async (reason) => {
      await Deno.writeTextFile(join(folder, FAILURE), `${reason}\n`);
      const complete = await exists(join(final, RESULTS));
      await moveInto(complete ? join(final, "failed") : final);
      return join(target, complete ? "failed" : "", "notebooks");
    },
  };
}

/** Why a folder cannot be made, in plain words. */
function reasonOf(error: unknown): string {
  if (error instanceof Deno.errors.PermissionDenied) return "permission denied";
  if (error instanceof Deno.errors.AlreadyExists || error instanceof Deno.errors.NotADirectory) {
    return "part of the path is a file";
  }
  return error instanceof Error ? error.message : String(error);
}

async function checkTarget(target: string): Promise<void> {
  const found = await Deno.stat(target).catch(() => undefined);
  if (found === undefined) return;
  if (!found.isDirectory) throw new InputError(`Cannot write to ${target}: it is a file`);
  if (await isOurs(target)) return;
  for (const entry of ENTRIES) {
    if (!await exists(join(target, entry))) continue;
    throw new InputError(
      `Cannot write to ${target}: it contains "${entry}", which no study wrote; choose another --out`,
    );
  }
}

/** True for a folder with the results of a study, or with the notebooks of one that failed. */
async function isOurs(target: string): Promise<boolean> {
  const text = await Deno.readTextFile(join(target, RESULTS)).catch(() => undefined);
  if (text !== undefined) return /"provenance":[\s\S]*"figures":/.test(text);
  return await exists(join(target, FAILURE));
}

async function exists(path: string): Promise<boolean> {
  return await Deno.stat(path).then(() => true, () => false);
}
