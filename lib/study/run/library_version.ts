/** Version of the library by the content of its sources. @module */
import { createHash } from "node:crypto";
import { fileURLToPath } from "node:url";
import settings from "../../../deno.json" with { type: "json" };

/** Folders whose content decides a result. */
const FOLDERS = [
  "lib/basics",
  "lib/units",
  "lib/air",
  "lib/sun",
  "lib/climate",
  "lib/soil",
  "lib/house",
  "lib/tubes",
  "lib/headers",
  "lib/fan",
  "lib/store",
  "data/soils",
  "data/glazings",
  "data/crops",
  "data/walls",
  "data/tubes",
  "data/fittings",
  "data/fans",
] as const;

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
  for (const folder of FOLDERS) {
    for (const path of await filesBelow(fileURLToPath(new URL(folder, root)))) {
      hash.update(path.slice(fileURLToPath(root).length)).update("\0");
      hash.update(await Deno.readFile(path)).update("\0");
    }
  }
  hash.update(await Deno.readFile(new URL("./chapters.ts", import.meta.url)));
  hash.update(JSON.stringify(settings.imports));
  return { version: settings.version, hash: hash.digest("hex") };
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
