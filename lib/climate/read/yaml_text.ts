/** YAML files beside tables: their data, the line of each key, what a check found in plain words. @module */
import { type Document, isMap, isNode, isPair, LineCounter } from "yaml";
import type { z } from "zod";
import { InputError } from "../../basics/mod.ts";
import { parseUpToFault, repeatedKeys } from "../../basics/yaml_limits.ts";

/** Line of the deepest part of a path that stands in the file. */
export type LineOf = (path: readonly PropertyKey[]) => number;

/** A YAML file, read. */
export interface YamlText {
  /** what it holds; null where it is empty */
  readonly data: unknown;
  /** line of a key, from 1 */
  readonly lineOf: LineOf;
}

/**
 * Reads a YAML file.
 *
 * @param yamlText its text
 * @param file its path, for messages
 * @param what it is, such as "the columns file"
 * @throws {InputError} with line and column where it is no YAML
 */
export function readYaml(yamlText: string, file: string, what: string): YamlText {
  const lines = new LineCounter();
  const { document, fault } = parseUpToFault(yamlText, lines);
  if (fault !== undefined) {
    const { line, col } = lines.linePos(fault.offset);
    throw new InputError(`Cannot read ${what}: ${fault.message}`, { file, line, column: col });
  }
  const [twice] = repeatedKeys(document);
  if (twice !== undefined) {
    const { line, col } = lines.linePos(twice.offset);
    throw new InputError(
      `Cannot read ${what}: the key "${twice.key}" appears twice in the same section: keep one`,
      { file, line, column: col },
    );
  }
  return {
    data: plainData(document, file, what),
    lineOf: (path) => lineOfPath(document, lines, path),
  };
}

/** The data of a document; aliases without an anchor are a fault of the file. */
function plainData(document: Document, file: string, what: string): unknown {
  try {
    return document.toJS();
  } catch (error) {
    throw new InputError(`Cannot read ${what}: ${(error as Error).message}`, { file, line: 1 });
  }
}

/** What is needed to tell where and what a fault is. */
export interface IssuePlace {
  /** path of the file */
  readonly file: string;
  /** what the file is */
  readonly what: string;
  /** line of a key */
  readonly lineOf: LineOf;
  /** keys that are known at a path, for messages */
  readonly known: (path: readonly PropertyKey[]) => string;
}

/** A fault that a check found, with its line, in plain words. */
export function describeIssue(issue: z.core.$ZodIssue, place: IssuePlace): InputError {
  const { file, what, lineOf, known } = place;
  if (issue.code === "unrecognized_keys") {
    const key = issue.keys[0]!;
    const where = issue.path.length === 0 ? what : issue.path.join(".");
    return new InputError(`Unknown key "${key}" in ${where}: known keys are ${known(issue.path)}`, {
      file,
      line: lineOf([...issue.path, key]),
    });
  }
  const name = issue.path.join(".") || what;
  return new InputError(`Cannot use ${name}: ${issueWords(issue)}`, {
    file,
    line: lineOf(issue.path),
  });
}

/** What is wrong with a value, in plain words. */
function issueWords(issue: z.core.$ZodIssue): string {
  switch (issue.code) {
    case "too_big":
      return issue.origin === "string"
        ? `expected at most ${issue.maximum} characters`
        : `expected at most ${issue.maximum}`;
    case "too_small":
      return issue.origin === "string" ? "it is empty" : `expected at least ${issue.minimum}`;
    case "invalid_type":
      return `expected ${TYPE_WORDS[issue.expected] ?? issue.expected}`;
    case "invalid_value":
      return `expected one of ${issue.values.map(String).join(", ")}`;
    default:
      return issue.message;
  }
}

const TYPE_WORDS: Readonly<Record<string, string>> = {
  object: "keys with values",
  record: "keys with values",
  array: "a list",
  string: "text",
  number: "a number",
};

function lineOfPath(document: Document, lines: LineCounter, path: readonly PropertyKey[]): number {
  for (let length = path.length; length > 0; length--) {
    const parent = document.getIn(path.slice(0, length - 1), true);
    const key = path[length - 1];
    const pair = isMap(parent)
      ? parent.items.find((item) => isPair(item) && String(item.key) === String(key))
      : undefined;
    if (pair !== undefined && isNode(pair.key) && pair.key.range) {
      return lines.linePos(pair.key.range[0]).line;
    }
    const node = document.getIn(path.slice(0, length), true);
    if (isNode(node) && node.range) return lines.linePos(node.range[0]).line;
  }
  return 1;
}
