/** What a YAML file of a person never needs, found without the parser's own slow looks. @module */
import { type Document, isScalar, visit } from "yaml";

/** Brackets within brackets, or dashes after dashes, beyond which nobody wrote the file. */
const DEEPEST = 100;

/**
 * Where a text opens more brackets within brackets than a person would, or starts as many list entries
 * on one line: the parser takes the square of their number. Brackets in comments and texts count too.
 *
 * @param text YAML
 * @returns place in the text, from 0; undefined where it is shallow
 */
export function tooDeepAt(text: string): number | undefined {
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
