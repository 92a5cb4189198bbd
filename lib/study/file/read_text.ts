/** Reads text files the user named, with faults in plain words. @module */
import { InputError } from "../../basics/mod.ts";

/**
 * Reads a UTF-8 text file.
 *
 * @param path as the user gave it, resolved
 * @param what for messages: "study file", "climate file"
 * @throws {InputError} where it is missing, a folder, unreadable, empty or not UTF-8
 */
export async function readTextFile(path: string, what: string): Promise<string> {
  const location = { file: path };
  let bytes: Uint8Array;
  try {
    const information = await Deno.stat(path);
    if (information.isDirectory) {
      throw new InputError(`Cannot read the ${what}: it is a folder`, location);
    }
    bytes = await Deno.readFile(path);
  } catch (error) {
    throw explain(error, what, location);
  }
  const text = decode(bytes, what, path);
  if (text.trim() === "") throw new InputError(`Cannot read the ${what}: it is empty`, location);
  return text;
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

function decode(bytes: Uint8Array, what: string, file: string): string {
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    const line = firstBadLine(bytes);
    throw new InputError(`Cannot read the ${what}: it is not UTF-8 text; save it as UTF-8`, {
      file,
      line,
    });
  }
}

/** Line of the first byte that is not UTF-8. */
function firstBadLine(bytes: Uint8Array): number {
  const decoder = new TextDecoder("utf-8", { fatal: true });
  let line = 1;
  let start = 0;
  for (let end = 0; end <= bytes.length; end++) {
    if (end < bytes.length && bytes[end] !== 10) continue;
    try {
      decoder.decode(bytes.subarray(start, end));
    } catch {
      return line;
    }
    line++;
    start = end + 1;
  }
  return line;
}
