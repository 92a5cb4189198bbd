/** Files that a study file names. @module */
import { dirname, isAbsolute, join } from "node:path";
import { InputError, InputErrors } from "../../basics/mod.ts";
import type { KeyPath, YamlSource } from "./yaml_source.ts";

/** A file and the key that names it. */
export interface NamedFile {
  /** key in the study file */
  readonly key: KeyPath;
  /** resolved path */
  readonly path: string;
}

/** A path of a study file, which is relative to that file, or where that file's copy says it lies now. */
export function resolveBeside(source: YamlSource, path: string): string {
  const moved = source.moved?.[path];
  if (moved !== undefined) return join(dirname(source.file), moved);
  return isAbsolute(path) ? path : join(dirname(source.file), path);
}

/**
 * Asks that files exist.
 *
 * @throws {InputErrors} with the line of the study that names each missing file
 */
export async function requireNamedFiles(
  source: YamlSource,
  files: readonly NamedFile[],
): Promise<void> {
  const missing: InputError[] = [];
  for (const { key, path } of files) {
    if (await Deno.stat(path).then(() => true, () => false)) continue;
    missing.push(
      new InputError(
        `Cannot find the file "${path}" named by "${key.join(".")}": there is no such file; ` +
          "paths in a study file are relative to that file",
        source.locate(key),
      ),
    );
  }
  if (missing.length > 0) throw new InputErrors(missing);
}

/** Runs a reader; adds the errors it throws to `faults` and gives undefined in their place. */
export async function collect<T>(
  faults: InputError[],
  read: () => Promise<T>,
): Promise<T | undefined> {
  try {
    return await read();
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    faults.push(...(error instanceof InputErrors ? error.faults : [error]));
    return undefined;
  }
}
