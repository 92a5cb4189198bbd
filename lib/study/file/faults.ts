/** Turns what the schema refused into messages with file, line and a way out. @module */
import { closest, distance } from "fastest-levenshtein";
import type { z } from "zod";
import { inFileOrder, InputError, type InputErrors } from "../../basics/mod.ts";
import { STUDY_KEYS } from "./schema.ts";
import type { KeyPath, YamlSource } from "./yaml_source.ts";

/** "soil.quartz" from a path; entries of lists count from 1. */
export function dotted(path: KeyPath): string {
  return path.map((part) => String(typeof part === "number" ? part + 1 : part)).join(".");
}

/**
 * Known key most like a word, or undefined where none is near (more than a third of it differs).
 *
 * @example
 * ```ts
 * import { assertEquals } from "@std/assert";
 * import { nearestKey } from "./faults.ts";
 *
 * assertEquals(nearestKey("lenght", ["length", "width"]), "length");
 * assertEquals(nearestKey("colour", ["length", "width"]), undefined);
 * ```
 */
export function nearestKey(word: string, known: readonly string[]): string | undefined {
  if (known.length === 0) return undefined;
  const plain = new Map(known.map((key) => [key.toLowerCase(), key]));
  const lower = word.toLowerCase().replaceAll(/[_\- ]/g, "");
  const longest = Math.max(...known.map(({ length }) => length));
  if (lower.length > 2 * longest + 2) return undefined; // more than half of it would differ
  const near = closest(lower, [...plain.keys()]);
  const limit = Math.max(2, Math.ceil(Math.max(lower.length, near.length) / 3));
  return distance(lower, near) <= limit ? plain.get(near) : undefined;
}

/** The path without the places in lists, under which the keys of its section are known. */
function sectionName(path: KeyPath): string {
  return dotted(path.filter((part) => typeof part !== "number"));
}

function unknownKey(key: string, path: KeyPath, source: YamlSource): InputError {
  const section = sectionName(path);
  const known = STUDY_KEYS.get(section) ?? [];
  const near = nearestKey(key, known);
  const where = section === "" ? "the study file" : `"${section}"`;
  const home = near === undefined ? sectionOf(key, section) : undefined;
  const hint = near !== undefined
    ? `did you mean "${near}"?`
    : home !== undefined
    ? `the key "${key}" belongs in "${home}"`
    : `known keys: ${known.join(", ")}`;
  return new InputError(
    `Unknown key "${key}" in ${where}: ${hint}`,
    source.locateKey(path, key),
  );
}

/** Another section that knows the key. */
function sectionOf(key: string, besides: string): string | undefined {
  return [...STUDY_KEYS].find(([name, keys]) => name !== besides && keys.includes(key))?.[0];
}

function messageOf(issue: z.core.$ZodIssue, source: YamlSource): string {
  const name = dotted(issue.path);
  if (issue.code === "invalid_type" && issue.expected === "object") {
    const keys = (STUDY_KEYS.get(sectionName(issue.path)) ?? []).slice(0, 4).join(", ");
    if (name === "") return `Cannot use the study file: expected sections such as ${keys}`;
    return source.has(issue.path)
      ? `Cannot use "${name}": expected a section with keys such as ${keys}`
      : `The section "${name}" is missing: expected keys such as ${keys}`;
  }
  if (issue.code === "invalid_type" && issue.expected === "array") {
    const keys = (STUDY_KEYS.get(sectionName(issue.path)) ?? []).join(", ");
    return `Cannot use "${name}": expected none, or a list of entries with the keys ${keys}`;
  }
  return issue.message.startsWith('"') ? issue.message : `Cannot use "${name}": ${issue.message}`;
}

/** Unknown keys of a section that are named one by one. */
const NAMED = 50;

function unknownKeys(keys: readonly string[], path: KeyPath, source: YamlSource): InputError[] {
  const faults = keys.slice(0, NAMED).map((key) => unknownKey(key, path, source));
  if (keys.length <= NAMED) return faults;
  const section = sectionName(path);
  const where = section === "" ? "the study file" : `"${section}"`;
  const more = `${keys.length - NAMED} more unknown keys in ${where}`;
  return [...faults, new InputError(more, source.locateKey(path, keys[NAMED]!))];
}

/** Every fault the schema found, in the order of the file. */
export function schemaFaults(error: z.ZodError, source: YamlSource): InputErrors {
  const faults = error.issues.flatMap((issue) =>
    issue.code === "unrecognized_keys"
      ? unknownKeys(issue.keys, issue.path, source)
      : [new InputError(messageOf(issue, source), source.locate(issue.path))]
  );
  return inFileOrder(faults);
}
