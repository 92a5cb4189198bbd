/** One run at a time writes into a folder. @module */
import { InputError } from "../../basics/mod.ts";

/** A folder held for one run. */
export interface Hold {
  /** Lets the next run in. */
  release(): Promise<void>;
}

/**
 * Takes a lock that the system drops with the process, however that ends.
 *
 * @param path file to lock, made where it is not there, removed on release
 * @param target folder as the user wrote it
 * @throws {InputError} where another run holds it, with that run's process and start
 */
export async function holdFolder(path: string, target: string): Promise<Hold> {
  while (true) {
    const file = await Deno.open(path, { create: true, read: true, write: true });
    if (!await file.tryLock(true)) {
      file.close();
      const owner = (await Deno.readTextFile(path).catch(() => "")).trim();
      throw new InputError(
        `Cannot write to ${target}: another run is writing to it${
          owner && ` (${owner})`
        }; wait for it, or choose another --out`,
      );
    }
    if (await isSame(file, path)) {
      await file.truncate();
      const owner = `process ${Deno.pid}, since ${new Date().toISOString()}`;
      // on a full disk the lock holds all the same, without a name
      await file.write(new TextEncoder().encode(`${owner}\n`)).catch(() => {});
      return {
        release: async () => {
          await Deno.remove(path).catch(() => {});
          file.close();
        },
      };
    }
    file.close(); // its owner removed it between opening and locking
  }
}

async function isSame(file: Deno.FsFile, path: string): Promise<boolean> {
  const there = await Deno.stat(path).catch(() => null);
  const { ino, dev } = await file.stat();
  return there !== null && there.ino === ino && there.dev === dev;
}
