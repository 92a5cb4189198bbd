/** Reads text files the user named, with faults in plain words. @module */
import { decodeText, InputError } from "../../basics/mod.ts";

/** What a file is for: settings are written by hand, tables by loggers too. */
export type TextKind = "settings" | "table";

/** Bytes that a file of each kind may have. */
export const TEXT_LIMITS: Readonly<Record<TextKind, number>> = { settings: 1e6, table: 200e6 };

/**
 * Reads a UTF-8 text file.
 *
 * @param path as the user gave it, resolved
 * @param what for messages: "study file", "climate file"
 * @param kind decides how large it may be
 * @param limits bytes of each kind
 * @throws {InputError} where it is missing, a folder, a pipe or device, too large, unreadable, empty
 * or not UTF-8
 */
export async function readTextFile(
  path: string,
  what: string,
  kind: TextKind,
  limits: Readonly<Record<TextKind, number>> = TEXT_LIMITS,
): Promise<string> {
  return (await readTextAndBytes(path, what, kind, limits)).text;
}

/** A text as it was read, and the bytes it was read from, which may begin with a mark that the text lacks. */
export interface TextAndBytes {
  /** decoded */
  readonly text: string;
  /** of the file */
  readonly bytes: Uint8Array;
}

/** Reads a UTF-8 text file as {@link readTextFile} does, and gives its bytes too. */
export async function readTextAndBytes(
  path: string,
  what: string,
  kind: TextKind,
  limits: Readonly<Record<TextKind, number>> = TEXT_LIMITS,
): Promise<TextAndBytes> {
  const location = { file: path };
  const refuse = (why: string) => new InputError(`Cannot read the ${what}: ${why}`, location);
  const bytes = await readBytes(path, limits[kind], refuse)
    .catch((error) => Promise.reject(explain(error, what, location)));
  const text = decodeText(bytes, what, path);
  if (text.trim() === "") throw refuse("it is empty");
  return { text, bytes };
}

/**
 * Text of a file that an earlier run may have left; signs that are not UTF-8 stand as replacement signs.
 *
 * @param path of the file
 * @param what for messages: "list of a sweep"
 * @param limit bytes it may have
 * @returns null where there is no such file
 * @throws {InputError} where it is a folder, a pipe or device, too large or unreadable
 */
export async function readTextIfThere(
  path: string,
  what: string,
  limit: number = TEXT_LIMITS.settings,
): Promise<string | null> {
  const location = { file: path };
  const refuse = (why: string) => new InputError(`Cannot read the ${what}: ${why}`, location);
  try {
    return new TextDecoder().decode(await readBytes(path, limit, refuse));
  } catch (error) {
    if (error instanceof Deno.errors.NotFound) return null;
    throw explain(error, what, location);
  }
}

/** No more than so many bytes of an ordinary file. */
async function readBytes(
  path: string,
  limit: number,
  refuse: (why: string) => InputError,
): Promise<Uint8Array> {
  const { isDirectory, isFile, size } = await Deno.stat(path);
  if (isDirectory) throw refuse("it is a folder");
  if (!isFile) throw refuse("it is a pipe, a device or a socket; name an ordinary file");
  const tooLarge = () => refuse(`it is larger than ${limit / 1e6} MB`);
  if (size > limit) throw tooLarge();
  const pieces: Uint8Array[] = [];
  let read = 0;
  const file = await Deno.open(path);
  for await (const piece of file.readable) {
    read += piece.length;
    if (read > limit) throw tooLarge();
    pieces.push(piece);
  }
  const bytes = new Uint8Array(read);
  let place = 0;
  for (const piece of pieces) {
    bytes.set(piece, place);
    place += piece.length;
  }
  return bytes;
}

function explain(error: unknown, what: string, location: { readonly file: string }): unknown {
  if (error instanceof Deno.errors.NotFound) {
    return new InputError(`Cannot find the ${what}: there is no such file`, location);
  }
  if (error instanceof Deno.errors.PermissionDenied) {
    return new InputError(`Cannot read the ${what}: permission denied`, location);
  }
  return error;
}
