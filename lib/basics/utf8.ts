/** Text of a file's bytes, with its fault in plain words. @module */
import { InputError } from "./errors.ts";

/**
 * Decodes a UTF-8 text; a byte-order mark goes.
 *
 * @param bytes of the file, each a plain number, 0 to 255
 * @param what for messages: "climate file"
 * @param file its path, for messages
 * @throws {InputError} with the line of the first byte that is not UTF-8
 */
export function decodeText(bytes: Uint8Array, what: string, file: string): string {
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
