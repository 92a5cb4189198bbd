/** YAML files of people: read up to the first fault, and what none of them needs is found soon. @module */
import {
  Composer,
  type Document,
  isScalar,
  type LineCounter,
  Parser,
  visit,
  type YAMLParseError,
} from "yaml";

/** Brackets within brackets, or dashes after dashes, beyond which nobody wrote the file. */
const DEEPEST = 100;

/**
 * Where a text opens more brackets within brackets than a person would, or starts as many list entries
 * on one line: the parser takes the square of their number. Brackets in comments and texts count too.
 *
 * @param text YAML
 * @returns place in the text, from 0; undefined where it is shallow
 */
function tooDeepAt(text: string): number | undefined {
  const dashes = new RegExp(`(?:[-?] ){${DEEPEST}}`).exec(text);
  let depth = 0;
  for (let at = 0; at < (dashes?.index ?? text.length); at++) {
    const sign = text[at];
    if (sign === "[" || sign === "{") depth++;
    else if ((sign === "]" || sign === "}") && depth > 0) depth--;
    if (depth > DEEPEST) return at;
  }
  return dashes?.index;
}

/** The first fault of a YAML text. */
export interface YamlFault {
  /** as the parser calls it, or TOO_DEEP */
  readonly code: string;
  /** in the parser's words */
  readonly message: string;
  /** place in the text, from 0 */
  readonly offset: number;
}

/** A YAML text as a document, or its first fault. */
export type YamlParsed =
  | { readonly document: Document.Parsed; readonly fault?: never }
  | { readonly document?: never; readonly fault: YamlFault };

/** Code of the parser for a stack that is full. */
const STACK_FULL = "RESOURCE_EXHAUSTION";

/** Ends the parser at the first fault. */
class Stopped extends Error {}

/**
 * Parses a YAML text up to its first fault: what follows one is mostly its consequence, and a hundred
 * thousand of them take the parser seconds. Keys that appear twice are left to {@link repeatedKeys}, as
 * the parser's own look for them takes the square of their number.
 *
 * @param text one document
 * @param lines takes the places of the lines
 */
export function parseUpToFault(text: string, lines: LineCounter): YamlParsed {
  const deep = (offset: number): YamlParsed => ({
    fault: { code: "TOO_DEEP", message: "it nests too deep here", offset },
  });
  const found = tooDeepAt(text);
  const parser = new Parser(lines.addNewLine);
  const composer = new Composer({ uniqueKeys: false, logLevel: "silent" });
  const inner = composer as unknown as {
    onError: (...words: readonly unknown[]) => void;
    readonly errors: readonly YAMLParseError[];
  };
  const { onError } = inner;
  inner.onError = (...words) => {
    onError(...words);
    if (words[3] !== true) throw new Stopped(); // the fourth says that it is a warning alone
  };
  if (found !== undefined) {
    lineStarts(text, found, lines);
    return deep(found);
  }
  try {
    const documents = composer.compose(parser.parse(text), true, text.length);
    const document = documents.next().value as Document.Parsed;
    const [fault] = document.errors;
    if (fault !== undefined) return { fault: faultOf(fault) };
    const second = documents.next();
    if (second.done === true) return { document };
    const offset = (second.value as Document.Parsed).range[0];
    return { fault: { code: "MULTIPLE_DOCS", message: "it holds several documents", offset } };
  } catch (error) {
    const [fault] = inner.errors;
    // what is not the end at a fault is the stack of the parser, full
    if (!(error instanceof Stopped || error instanceof RangeError)) throw error;
    if (fault === undefined || fault.code === STACK_FULL) return deep(fault?.pos[0] ?? 0);
    return { fault: faultOf(fault) };
  }
}

const faultOf = ({ code, message, pos }: YAMLParseError): YamlFault => ({
  code,
  message,
  offset: pos[0],
});

/** Tells the counter the lines before a place that the parser never sees. */
function lineStarts(text: string, end: number, lines: LineCounter): void {
  let at = 0;
  do {
    lines.addNewLine(at);
    at = text.indexOf("\n", at) + 1;
  } while (at > 0 && at <= end);
}

/** A key that stands in its section already. */
export interface RepeatedKey {
  /** the key */
  readonly key: string;
  /** place in the text, from 0 */
  readonly offset: number;
}

/** Repeated keys that are told. */
const TOLD = 20;

/** The first keys of a document that stand in their section already. */
export function repeatedKeys(document: Document): readonly RepeatedKey[] {
  const repeated: RepeatedKey[] = [];
  visit(document, {
    Map(_, { items }) {
      const seen = new Set<string>();
      for (const { key } of items) {
        if (!isScalar(key)) continue;
        const name = String(key.value);
        if (seen.has(name)) repeated.push({ key: name, offset: key.range?.[0] ?? 0 });
        if (repeated.length >= TOLD) return visit.BREAK;
        seen.add(name);
      }
    },
  });
  return repeated;
}
