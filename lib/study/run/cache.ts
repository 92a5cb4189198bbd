/** Results on disk under the hash of all that decides them. @module */
import { createHash, randomUUID } from "node:crypto";
import { deserialize, serialize } from "node:v8";
import { join } from "node:path";

/** How much is kept; the oldest go first. */
export interface CacheLimits {
  /** entries */
  readonly entries: number;
  /** bytes of all entries together */
  readonly bytes: number;
}

const LIMITS: CacheLimits = { entries: 1000, bytes: 400e6 };
const HASH_BYTES = 32;
/** ms after which a piece that is still being written belongs to a run that is dead */
const PIECE_LIFE = 3_600_000;

/** A folder of results. */
export interface ResultCache {
  /** Result of a key, computed and stored where it is not there or damaged. */
  get<T>(key: string, compute: () => T | Promise<T>): Promise<T>;
}

/** A cache that remembers nothing. */
export const NO_CACHE: ResultCache = { get: (_key, compute) => Promise.resolve().then(compute) };

/**
 * Cache in a folder, one subfolder an entry. An entry that is damaged, or another key's, is computed
 * again; entries are written to a temporary file and renamed, so that two processes cannot disturb
 * each other.
 *
 * @param folder made where it does not exist
 * @param limits oldest entries beyond these are removed
 */
export function diskCache(folder: string, limits: CacheLimits = LIMITS): ResultCache {
  return {
    async get<T>(key: string, compute: () => T | Promise<T>): Promise<T> {
      const stored = await readEntry<T>(folder, key);
      if (stored !== undefined) return stored.value;
      const value = await compute();
      await writeEntry(folder, key, value);
      await prune(folder, limits);
      return value;
    },
  };
}

/** Of the key too, so that an entry that was moved or renamed is not taken for another. */
function digest(key: string, bytes: Uint8Array): Uint8Array {
  return createHash("sha256").update(key).update("\0").update(bytes).digest();
}

async function readEntry<T>(
  folder: string,
  key: string,
): Promise<{ readonly value: T } | undefined> {
  const path = join(folder, key, "result.bin");
  try {
    const bytes = await Deno.readFile(path);
    const content = bytes.subarray(HASH_BYTES);
    const expected = digest(key, content);
    if (!expected.every((byte, index) => byte === bytes[index])) return undefined;
    const value = deserialize(content) as T;
    const now = new Date();
    await Deno.utime(path, now, now).catch(() => {});
    return { value };
  } catch {
    return undefined; // not there, damaged, or of another Deno version: computed again
  }
}

async function writeEntry(folder: string, key: string, value: unknown): Promise<void> {
  const content = new Uint8Array(serialize(value));
  const bytes = new Uint8Array(HASH_BYTES + content.length);
  bytes.set(digest(key, content));
  bytes.set(content, HASH_BYTES);
  const temporary = join(folder, `${randomUUID()}.part`);
  try {
    await Deno.mkdir(join(folder, key), { recursive: true });
    await Deno.writeFile(temporary, bytes);
    await Deno.rename(temporary, join(folder, key, "result.bin"));
  } catch {
    await Deno.remove(temporary).catch(() => {}); // a full or read-only disk only costs time
  }
}

async function prune(folder: string, limits: CacheLimits): Promise<void> {
  const entries: { readonly path: string; readonly time: number; readonly size: number }[] = [];
  try {
    for await (const entry of Deno.readDir(folder)) {
      if (!entry.isDirectory) {
        await removeDeadPiece(join(folder, entry.name));
        continue;
      }
      const path = join(folder, entry.name);
      const information = await Deno.stat(join(path, "result.bin")).catch(() => undefined);
      if (information === undefined) continue;
      entries.push({ path, time: information.mtime?.getTime() ?? 0, size: information.size });
    }
    entries.sort((one, other) => other.time - one.time);
    let bytes = 0;
    for (const [index, { path, size }] of entries.entries()) {
      bytes += size;
      if (index === 0 || (index < limits.entries && bytes <= limits.bytes)) continue;
      await Deno.remove(path, { recursive: true }).catch(() => {});
    }
  } catch {
    // another process may be pruning too
  }
}

/** Removes what a run that was cut off had not finished writing. */
async function removeDeadPiece(path: string): Promise<void> {
  if (!/[0-9a-f-]{36}\.part$/.test(path)) return;
  const { mtime } = await Deno.stat(path);
  // a clock that was set back leaves pieces of the future
  if (mtime === null || Math.abs(Date.now() - mtime.getTime()) < PIECE_LIFE) return;
  await Deno.remove(path).catch(() => {});
}
