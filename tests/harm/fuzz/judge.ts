/** What a reader may do with a faulty file: give sound values, or refuse it in plain words. @module */
import { InputError, InputErrors } from "winterground/basics/mod.ts";

/** What happened. */
export type Verdict =
  | { readonly kind: "read" }
  | { readonly kind: "refused"; readonly lines: boolean }
  | { readonly kind: "fault"; readonly words: string };

/** Longest message that a person reads, characters. */
const LONGEST_MESSAGE = 20_000;

/** What a file may hold that is quoted as Infinity. */
const INFINITE = /\.inf|e\+?\d{3}|\d{300}/i;

/** Path of the first number in a value that is none, undefined where there is none. */
export function oddNumber(value: unknown, path = "", seen = new Set<object>()): string | undefined {
  if (typeof value === "number") return Number.isFinite(value) ? undefined : `${path} is ${value}`;
  if (typeof value !== "object" || value === null || seen.has(value)) return undefined;
  seen.add(value);
  if (ArrayBuffer.isView(value) && !(value instanceof DataView)) {
    const at = (value as Float64Array).findIndex((one) => !Number.isFinite(one));
    return at === -1 ? undefined : `${path}[${at}] is ${(value as Float64Array)[at]}`;
  }
  const parts = value instanceof Map ? value : Object.entries(value);
  for (const [key, part] of parts) {
    const odd = oddNumber(part, `${path}.${String(key)}`, seen);
    if (odd !== undefined) return odd;
  }
  return undefined;
}

/**
 * What is wrong with the words of a refusal, undefined where nothing is.
 *
 * @param given content of the file
 * @param file its path, or that of its folder
 */
export function oddRefusal(error: InputError, given: string, file: string): string | undefined {
  const { message } = error;
  if (message.length > LONGEST_MESSAGE) return `message of ${message.length} characters`;
  for (const word of ["[object ", "undefined", "Infinity", "call stack", "\n    at "]) {
    if (word === "Infinity" && INFINITE.test(given)) continue;
    if (message.includes(word) && !given.includes(word.trim())) return `message with "${word}"`;
  }
  const faults = error instanceof InputErrors ? error.faults : [error];
  const lost = faults.find((one) => one.location === undefined && !one.message.includes(file));
  return lost === undefined ? undefined : `no file named: ${lost.message.slice(0, 200)}`;
}

/** Runs a reader on what it is given. */
export async function judge(
  read: () => unknown,
  given: Uint8Array,
  file: string,
): Promise<Verdict> {
  try {
    const odd = oddNumber(await read());
    return odd === undefined ? { kind: "read" } : { kind: "fault", words: `gives${odd}` };
  } catch (error) {
    if (!(error instanceof InputError)) {
      const words = error instanceof Error ? `${error.name}: ${error.message}` : String(error);
      const at = error instanceof Error ? error.stack?.match(/lib\/[\w/.]+:\d+/)?.[0] ?? "" : "";
      return { kind: "fault", words: `${words.slice(0, 200)} ${at}`.trim() };
    }
    const odd = oddRefusal(error, new TextDecoder().decode(given), file);
    if (odd !== undefined) return { kind: "fault", words: odd };
    const faults = error instanceof InputErrors ? error.faults : [error];
    return { kind: "refused", lines: faults.every(({ location }) => location?.line !== undefined) };
  }
}
