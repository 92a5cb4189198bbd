/** What a folder of rows was made with; rows of anything else are never added to it. @module */
import { join } from "node:path";
import { z } from "zod";
import { InputError } from "../../basics/mod.ts";
import { readTextIfThere } from "../file/read_text.ts";
import { writeWhole } from "../results/write_whole.ts";
import type { FigureColumn } from "./types.ts";

/** Name of the file in the folder. */
export const MANIFEST = "sweep.json";

/** What decides the rows. */
export interface SweepInputs {
  /** SHA-256 of the study file and the files it names, hex */
  readonly study: string;
  /** SHA-256 of the sweep file, hex */
  readonly sweep: string;
  /** SHA-256 of the sources and tables of the library, hex */
  readonly library: string;
}

/** Content of the file. */
export interface SweepManifest {
  /** what decides the rows */
  readonly made: SweepInputs;
  /** count of rows of the whole sweep */
  readonly rows: number;
  /** columns of figures, with the values of the study as it is */
  readonly figures: readonly FigureColumn[];
}

const SCHEMA = z.object({
  made: z.object({ study: z.string(), sweep: z.string(), library: z.string() }),
  rows: z.int().min(1),
  figures: z.array(z.object({
    key: z.string(),
    unit: z.string(),
    label: z.string(),
    unchanged: z.union([z.number(), z.string(), z.null()]),
  })),
});

const NAMES = {
  study: "the study, or a file it names",
  sweep: "the sweep file",
  library: "the library",
} as const;

/**
 * The manifest of a folder.
 *
 * @param folder of the rows
 * @param made what the rows would be made with now
 * @returns null where there is none yet
 * @throws {InputError} where the folder holds rows of something else, or files of somebody else
 */
export async function findManifest(
  folder: string,
  made: SweepInputs,
): Promise<SweepManifest | null> {
  const file = join(folder, MANIFEST);
  const text = await readTextIfThere(file, "list of a sweep");
  if (text === null) {
    await requireEmpty(folder);
    return null;
  }
  const manifest = parsed(text, file);
  const changed = (["study", "sweep", "library"] as const)
    .filter((name) => manifest.made[name] !== made[name]);
  if (changed.length > 0) {
    throw new InputError(
      `Cannot add rows to ${folder}: since its first row, ${
        changed.map((name) => NAMES[name]).join(" and ")
      } changed, and its rows would not belong together; choose another --out, or move the folder away`,
    );
  }
  return manifest;
}

function parsed(text: string, file: string): SweepManifest {
  try {
    return SCHEMA.parse(JSON.parse(text));
  } catch {
    throw new InputError(
      "Cannot read what the rows were made with: it is damaged; bring it back from a copy, or choose " +
        "another --out",
      { file },
    );
  }
}

async function requireEmpty(folder: string): Promise<void> {
  try {
    for await (const { name } of Deno.readDir(folder)) {
      if (name.startsWith(".") || name.endsWith(".part")) continue;
      throw new InputError(
        `Cannot write to ${folder}: it holds files that no sweep wrote, such as "${name}"; choose ` +
          "another --out",
      );
    }
  } catch (error) {
    if (error instanceof Deno.errors.NotADirectory) {
      throw new InputError(`Cannot write to ${folder}: it is a file, not a folder`);
    }
    if (!(error instanceof Deno.errors.NotFound)) throw error;
  }
}

/** Writes the manifest of a new folder. Parts of a sweep that start together write the same. */
export async function writeManifest(folder: string, manifest: SweepManifest): Promise<void> {
  await Deno.mkdir(folder, { recursive: true });
  await writeWhole(join(folder, MANIFEST), JSON.stringify(manifest, null, 2) + "\n");
}
