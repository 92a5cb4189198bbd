/** A file that belongs to the inputs of a study, as it was given. @module */
import { readTextAndBytes, type TextKind } from "./read_text.ts";

/** By what a file was named. */
export interface FileNaming {
  /** key of the study file such as "climate.file", an option such as "--climate", or "study" */
  readonly by: string;
  /** the name that the study file gives it; left out where no key names it */
  readonly name?: string | undefined;
}

/** A file as it was given. */
export interface GivenFile extends FileNaming {
  /** where it was read */
  readonly path: string;
  /** its content to the byte, each a plain number, 0 to 255 */
  readonly bytes: Uint8Array;
}

/** A file of these bytes. */
export function givenFile(naming: FileNaming, path: string, bytes: Uint8Array): GivenFile {
  return { ...naming, path, bytes };
}

/** Reads a text file that belongs to the inputs; throws as `readTextFile` does. */
export async function readGiven(
  path: string,
  what: string,
  kind: TextKind,
  naming: FileNaming,
): Promise<{ readonly text: string; readonly file: GivenFile }> {
  const { text, bytes } = await readTextAndBytes(path, what, kind);
  return { text, file: givenFile(naming, path, bytes) };
}
