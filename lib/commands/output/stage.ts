/**
 * The folder a study writes to. Everything is written to a hidden folder first, and put in place when
 * the study is done, so a run that fails or is cut off leaves an earlier result as it was.
 *
 * @module
 */
import { basename, dirname, join, resolve } from "node:path";
import { InputError } from "../../basics/mod.ts";
import { refuse } from "./disk_words.ts";
import { type Hold, holdFolder } from "./lock.ts";
import { FAILED, type Hashes, readManifest, writeManifest } from "./manifest.ts";
import {
  isOwnWork,
  type KeptAside,
  partBeside,
  partInside,
  recover,
  switchBeside,
  switchInside,
} from "./switch.ts";

const LOCK = ".lock";
/** What systems put into folders on their own. */
const SYSTEM_FILES = [".DS_Store", "Thumbs.db", "desktop.ini", "lost+found"];

/** Results in their final place. */
export interface Published {
  /** the folder as the user wrote it */
  readonly folder: string;
  /** files of the user's that had to make room for the run's */
  readonly aside: KeptAside;
}

/** A folder in which results wait until they are complete. */
export interface Stage {
  /** where to write; its folder `notebooks` is there */
  readonly folder: string;
  /** files of the user's that an earlier run, cut off, had still to move */
  readonly aside: KeptAside;
  /** Puts everything in the place of an earlier run's files; hashes that are known are not taken again. */
  publish(known?: Hashes): Promise<Published>;
  /** Keeps the notebooks of a run that failed and says why; gives the folder they are in. */
  keepNotebooks(reason: string): Promise<string>;
  /** Removes what was written and lets the next run in. */
  discard(): Promise<void>;
}

/**
 * Prepares to write into `target`, alone.
 *
 * @param target folder; need not be there
 * @param given `inside`: true to use no place beside the folder even where that can be had
 * @throws {InputError} when the target is a file, a folder with files of which no run wrote any, or
 * written to by another run
 */
export async function openStage(
  target: string,
  given: { readonly inside?: boolean } = {},
): Promise<Stage> {
  const final = await finalPlace(target);
  const run = crypto.randomUUID().slice(0, 8);
  const inside = given.inside === true ||
    !await hasRoomBeside(final, run).catch((error) => refuse(target, error));
  if (inside) await Deno.mkdir(final, { recursive: true }).catch((error) => refuse(target, error));
  const lock = inside ? join(final, LOCK) : join(dirname(final), `.${basename(final)}${LOCK}`);
  const hold = await holdFolder(lock, target).catch((error) => refuse(target, error));
  const folder = inside ? partInside(final, run) : partBeside(final, run);
  try {
    const aside = await recover(final);
    await checkTarget(final, target);
    await Deno.mkdir(join(folder, "notebooks"), { recursive: true });
    return stageOf({ target, final, run, inside, folder, hold, aside });
  } catch (error) {
    await hold.release();
    refuse(target, error);
  }
}

interface Opened {
  readonly target: string;
  readonly final: string;
  readonly run: string;
  readonly inside: boolean;
  readonly folder: string;
  readonly hold: Hold;
  readonly aside: KeptAside;
}

function stageOf({ target, final, run, inside, folder, hold, aside }: Opened): Stage {
  let held = true;
  const discard = async () => {
    if (!held) return;
    held = false;
    await Deno.remove(folder, { recursive: true }).catch(() => {});
    await hold.release();
  };
  return {
    folder,
    aside,
    discard,
    publish: async (known) => {
      await writeManifest(folder, run, known);
      const moved = await (inside ? switchInside : switchBeside)(folder, final, run);
      await discard();
      return { folder: target, aside: moved };
    },
    keepNotebooks: async (reason) => {
      await Deno.writeTextFile(join(folder, "failure.txt"), `${reason}\n`);
      await writeManifest(folder, run);
      await Deno.mkdir(final, { recursive: true });
      const place = join(final, FAILED);
      await Deno.rename(folder, partBeside(place, run));
      await switchBeside(partBeside(place, run), place, run);
      await discard();
      return join(target, FAILED, "notebooks");
    },
  };
}

/** The folder itself where the target is a link to one. */
async function finalPlace(target: string): Promise<string> {
  const found = await Deno.stat(target).catch(() => null);
  if (found === null) return resolve(target);
  if (!found.isDirectory) throw new InputError(`Cannot write to ${target}: it is a file`);
  return await Deno.realPath(target);
}

/** Whether a folder can be made beside this one and renamed to it. */
async function hasRoomBeside(final: string, run: string): Promise<boolean> {
  const there = await Deno.stat(final).catch(() => null);
  if (there === null) {
    await Deno.mkdir(dirname(final), { recursive: true });
    return true;
  }
  const around = await Deno.stat(dirname(final)).catch(() => null);
  if (dirname(final) === final || around === null || around.dev !== there.dev) return false;
  const trial = partBeside(final, run);
  return await Deno.mkdir(trial).then(() => Deno.remove(trial)).then(() => true, () => false);
}

async function checkTarget(final: string, target: string): Promise<void> {
  const names = (await Array.fromAsync(Deno.readDir(final)).catch(() => []))
    .map(({ name }) => name)
    .filter((name) => name !== LOCK && !SYSTEM_FILES.includes(name) && !isOwnWork(name));
  if (names.length === 0) return;
  for (const folder of [final, join(final, FAILED)]) {
    if (await readManifest(folder) !== null) return;
  }
  const found = names.sort()[0]!;
  throw new InputError(
    `Cannot write to ${target}: it contains "${found}", and no list of a run says that a study ` +
      "wrote there; choose another --out, or move its files away",
  );
}
