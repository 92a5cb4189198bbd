/** Which copy of the library this is: its commit and its list of packages. @module */
import { createHash } from "node:crypto";
import { dirname, join, resolve } from "node:path";
import { fileURLToPath } from "node:url";

/** The copy of the library that made a run. */
export interface Checkout {
  /** commit that the folder was last set to, hex; null where git keeps none */
  readonly commit: string | null;
  /** SHA-256, hex, of deno.lock; null where there is none */
  readonly lockHash: string | null;
}

let known: Promise<Checkout> | undefined;

/** Commit and packages of the library; read once. */
export function checkout(): Promise<Checkout> {
  known ??= readCheckout(fileURLToPath(new URL("../../../", import.meta.url)));
  return known;
}

/**
 * Commit and packages of a folder. Files are read, no program is run; whether files were changed
 * since the commit is not looked at, the hash of the library says that.
 *
 * @param root of the project
 */
export async function readCheckout(root: string): Promise<Checkout> {
  const lock = await Deno.readFile(join(root, "deno.lock")).catch(() => null);
  return {
    commit: await commitOf(join(root, ".git")),
    lockHash: lock && createHash("sha256").update(lock).digest("hex"),
  };
}

const HEX = /^[0-9a-f]{40}(?:[0-9a-f]{24})?$/;

/** The commit behind HEAD, by way of names where there are any. */
async function commitOf(git: string): Promise<string | null> {
  const link = /^gitdir: (.+)$/m.exec(await textOf(git) ?? "")?.[1];
  const own = link === undefined ? git : resolve(dirname(git), link);
  const common = resolve(own, (await textOf(join(own, "commondir")) ?? ".").trim());
  const packed = await textOf(join(common, "packed-refs")) ?? "";
  let name = "HEAD";
  for (let steps = 0; steps < 5; steps++) {
    const text = await textOf(join(own, name)) ?? await textOf(join(common, name)) ??
      packed.split("\n").find((line) => line.endsWith(` ${name}`))?.split(" ")[0] ?? "";
    if (HEX.test(text.trim())) return text.trim();
    const next = /^ref: ([\w./-]+)$/.exec(text.trim())?.[1];
    if (next === undefined) return null;
    name = next;
  }
  return null;
}

async function textOf(path: string): Promise<string | null> {
  return await Deno.readTextFile(path).catch(() => null);
}
