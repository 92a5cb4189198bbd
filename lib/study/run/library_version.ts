/** Version of the library by the content of its sources. @module */
import { createHash } from "node:crypto";
import { fileURLToPath } from "node:url";
import { CHAPTERS } from "../chapters.ts";
import settings from "../../../deno.json" with { type: "json" };

/** Folders whose content decides a result: what every chapter uses, and the chapters. */
const FOLDERS = ["basics", "units", "air", "sun", ...CHAPTERS.map(({ name }) => name)]
  .map((name) => `lib/${name}`);

/** Tables that decide no result: they are inputs with hashes of their own, or only shown. */
const SHOWN_TABLES = ["cautions", "climates", "display", "drawings", "logs", "sources", "studies"];

/** What is written into the provenance of a run. */
export interface LibraryVersion {
  /** version number of the library */
  readonly version: string;
  /** SHA-256 of the sources and tables that decide a result, hex */
  readonly hash: string;
}

let known: Promise<LibraryVersion> | undefined;

/** Version and hash of the library; read once. */
export function libraryVersion(): Promise<LibraryVersion> {
  known ??= readVersion();
  return known;
}

async function readVersion(): Promise<LibraryVersion> {
  const root = new URL("../../../", import.meta.url);
  const hash = createHash("sha256");
  const below = fileURLToPath(root);
  for (const folder of [...FOLDERS, ...await tables(below)]) {
    for (const path of await filesBelow(`${below}${folder}`)) {
      hash.update(path.slice(below.length)).update("\0");
      hash.update(await Deno.readFile(path)).update("\0");
    }
  }
  hash.update(JSON.stringify(settings.imports));
  return { version: settings.version, hash: hash.digest("hex") };
}

/** Folders of data that decide a result. */
async function tables(root: string): Promise<string[]> {
  const found: string[] = [];
  for await (const { name, isDirectory } of Deno.readDir(`${root}data`)) {
    if (isDirectory && !SHOWN_TABLES.includes(name)) found.push(`data/${name}`);
  }
  return found.sort();
}

async function filesBelow(folder: string): Promise<string[]> {
  const found: string[] = [];
  try {
    for await (const entry of Deno.readDir(folder)) {
      const path = `${folder}/${entry.name}`;
      if (entry.isDirectory) found.push(...await filesBelow(path));
      else if (entry.isFile) found.push(path);
    }
  } catch (error) {
    if (!(error instanceof Deno.errors.NotFound)) throw error;
  }
  return found.sort();
}
