/**
 * Puts the folder of a new run in the place of an earlier one's. The user's own files go with it; what
 * is in the way of a new file is kept aside. Every step can be the last: {@link recover} finishes what
 * was begun, and nothing is deleted but what a list of ours names with the hash it has.
 *
 * @module
 */
import { cp } from "node:fs/promises";
import { basename, dirname, join } from "node:path";
import { FAILED, filesOf, isUnchanged, MANIFEST, readManifest } from "./manifest.ts";

/** Folder in the results folder for files that had to make room. */
export const KEPT = "kept";

/** A file that was moved, as paths of the results folder. */
interface Moved {
  readonly from: string;
  readonly to: string;
}

/** Files that were moved. */
export type KeptAside = readonly Moved[];

/** The folder that files belong to, the run by which those in the way are kept, and which were. */
interface Room {
  readonly final: string;
  readonly run: string;
  readonly aside: Moved[];
}

/** The hidden neighbours of a folder that runs leave behind. */
const neighbour = (final: string, run: string, what: "part" | "old") =>
  join(dirname(final), `.${basename(final)}.${run}.${what}`);

/** Where a run's results wait: beside the folder, */
export const partBeside = (final: string, run: string): string => neighbour(final, run, "part");
/** or in it, where nothing may be written beside it or it is a disk of its own. */
export const partInside = (final: string, run: string): string => join(final, `.${run}.part`);

/**
 * Renames a complete folder to its final place; an earlier one makes room by one renaming before.
 *
 * @param part complete, with its list
 */
export async function switchBeside(part: string, final: string, run: string): Promise<KeptAside> {
  const old = neighbour(final, run, "old");
  if (!await exists(final)) {
    await Deno.rename(part, final);
    return [];
  }
  if (!await Deno.rename(final, old).then(() => true, () => false)) {
    // a folder that another one is mounted on keeps its name
    await cp(part, partInside(final, run), { recursive: true });
    return await switchInside(partInside(final, run), final, run);
  }
  await Deno.rename(part, final);
  return await settle(old, final);
}

/**
 * Moves the files of a complete folder into the one around it.
 *
 * @param part complete, with its list, in `final`
 */
export async function switchInside(part: string, final: string, run: string): Promise<KeptAside> {
  const ready = join(final, `.${run}.new`);
  await Deno.rename(part, ready);
  return await moveIn(ready, final);
}

/** Finishes, or takes back, a switch that was cut off, and removes what dead runs left. */
export async function recover(final: string): Promise<KeptAside> {
  const kept: Moved[] = [];
  for (const place of [final, join(final, FAILED)]) {
    for (const old of await leftBy(dirname(place), `.${basename(place)}.`, ".old")) {
      if (await exists(place)) kept.push(...await settle(old, place));
      else await Deno.rename(old, place);
    }
    for (const ready of await leftBy(place, ".", ".new")) {
      kept.push(...await moveIn(ready, place));
    }
    for (
      const dead of [
        ...await leftBy(dirname(place), `.${basename(place)}.`, ".part"),
        ...await leftBy(place, ".", ".part"),
      ]
    ) await Deno.remove(dead, { recursive: true });
  }
  return kept;
}

/** True for what these functions leave in a folder while they work. */
export function isOwnWork(name: string): boolean {
  return new RegExp(`^\\.(?:${FAILED}\\.)?[0-9a-f]{8}\\.(?:part|new|old)$`).test(name);
}

async function leftBy(folder: string, before: string, after: string): Promise<string[]> {
  const found: string[] = [];
  const entries = await Array.fromAsync(Deno.readDir(folder)).catch(() => []);
  for (const { name, isDirectory } of entries) {
    if (!isDirectory || !name.startsWith(before) || !name.endsWith(after)) continue;
    const run = name.slice(before.length, name.length - after.length);
    if (/^[0-9a-f]{8}$/.test(run)) found.push(join(folder, name));
  }
  return found;
}

/** Empties the folder of an earlier run: its files go, the user's move into the new one. */
async function settle(old: string, final: string): Promise<KeptAside> {
  const { run, files } = await listedIn(old);
  const room: Room = { final, run, aside: [] };
  for (const path of await filesOf(old)) {
    if (isManifest(path)) continue;
    const file = join(old, path);
    if (await isUnchanged(file, files.get(path))) await Deno.remove(file);
    else await moveTo(file, path, room);
  }
  const ours = foldersOf(files.keys());
  for (const path of (await foldersIn(old)).filter((path) => !ours.has(path))) {
    await Deno.mkdir(join(final, path), { recursive: true }).catch(() => {});
  }
  await removeManifests(old);
  await removeEmpty(old);
  return room.aside;
}

/** Moves a run's files into a folder in which an earlier run's and the user's lie. */
async function moveIn(ready: string, final: string): Promise<KeptAside> {
  if (await readManifest(ready) === null) { // it goes last: all else is in place
    await removeEmpty(ready);
    return [];
  }
  const { run, files } = await listedIn(final);
  const room: Room = { final, run, aside: [] };
  for (const [path, hash] of files) {
    const file = join(final, path);
    if (await isUnchanged(file, hash)) await Deno.remove(file);
  }
  await removeManifests(final);
  const coming = (await filesOf(ready)).filter((path) => path !== MANIFEST);
  for (const folder of foldersOf(coming)) await makeFolder(folder, room);
  for (const path of [...coming, MANIFEST]) {
    const place = join(final, path);
    if (await exists(place)) await keep(place, path, room);
    await Deno.rename(join(ready, path), place);
  }
  for (const path of [...foldersOf(files.keys())].toSorted().reverse()) {
    await Deno.remove(join(final, path)).catch(() => {}); // stays where it is not empty
  }
  await removeEmpty(ready);
  return room.aside;
}

/** Makes a folder of the results; a file of the user's that has its name is kept aside. */
async function makeFolder(path: string, room: Room): Promise<void> {
  const place = join(room.final, path);
  const found = await Deno.stat(place).catch(() => null);
  if (found?.isDirectory === true) return;
  if (await exists(place)) await keep(place, path, room);
  await Deno.mkdir(place);
}

/** What the lists of a folder and of its failed run name, and the run of the first of them. */
async function listedIn(
  folder: string,
): Promise<{ readonly run: string; readonly files: ReadonlyMap<string, string> }> {
  const whole = await readManifest(folder);
  const failed = await readManifest(join(folder, FAILED));
  const below = Object.entries(failed?.files ?? {})
    .map(([path, hash]) => [`${FAILED}/${path}`, hash] as const);
  return {
    run: whole?.run ?? failed?.run ?? "earlier",
    files: new Map([...Object.entries(whole?.files ?? {}), ...below]),
  };
}

const isManifest = (path: string) => path === MANIFEST || path === `${FAILED}/${MANIFEST}`;

async function removeManifests(folder: string): Promise<void> {
  for (const path of [`${FAILED}/${MANIFEST}`, MANIFEST]) {
    await Deno.remove(join(folder, path)).catch(ignoreMissing);
  }
}

/** Moves a file of the user's to where it was, or aside where something of the new run stands. */
async function moveTo(file: string, path: string, room: Room): Promise<void> {
  const place = join(room.final, path);
  if (await exists(place)) return await keep(file, path, room);
  await Deno.mkdir(dirname(place), { recursive: true }).catch(() => {});
  // a part of the path may be a file of the new run's
  await Deno.rename(file, place).catch(() => keep(file, path, room));
}

async function keep(file: string, path: string, { final, run, aside }: Room): Promise<void> {
  for (let copy = 0;; copy++) {
    const to = [KEPT, copy === 0 ? run : `${run}-${copy}`, path].join("/");
    if (await exists(join(final, to))) continue;
    await Deno.mkdir(dirname(join(final, to)), { recursive: true });
    await Deno.rename(file, join(final, to));
    aside.push({ from: path, to });
    return;
  }
}

/** Removes a folder of folders; what is not empty stays. */
async function removeEmpty(folder: string): Promise<void> {
  for (const path of (await foldersIn(folder)).reverse()) {
    await Deno.remove(join(folder, path)).catch(() => {});
  }
  await Deno.remove(folder).catch(() => {});
}

/** Folders that paths of files lead through. */
function foldersOf(paths: Iterable<string>): Set<string> {
  const folders = new Set<string>();
  for (const path of paths) {
    const parts = path.split("/").slice(0, -1);
    parts.forEach((_, k) => folders.add(parts.slice(0, k + 1).join("/")));
  }
  return folders;
}

/** Paths of all folders below one, each before what is in it. */
async function foldersIn(folder: string, prefix = ""): Promise<string[]> {
  const found: string[] = [];
  for await (const { name, isDirectory } of Deno.readDir(join(folder, prefix))) {
    if (isDirectory) found.push(prefix + name, ...await foldersIn(folder, `${prefix}${name}/`));
  }
  return found;
}

function ignoreMissing(error: unknown): void {
  if (!(error instanceof Deno.errors.NotFound)) throw error;
}

async function exists(path: string): Promise<boolean> {
  return await Deno.lstat(path).then(() => true, () => false);
}
