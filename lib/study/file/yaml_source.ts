/** YAML text with the place of every key, so that each fault can name its line. @module */
import { isMap, isScalar, LineCounter, type Node, type Pair } from "yaml";
import { type FileLocation, inFileOrder, InputError, InputErrors } from "../../basics/mod.ts";
import { parseUpToFault, repeatedKeys, type YamlFault } from "../../basics/yaml_limits.ts";

/** Keys from the top of the file down to a value. */
export type KeyPath = readonly PropertyKey[];

/** A parsed YAML file. */
export interface YamlSource {
  readonly file: string;
  /** plain data */
  readonly data: unknown;
  /** where files lie that it names, by the name it gives them, for a copy kept with a run */
  readonly moved?: Readonly<Record<string, string>>;
  /** true where the file holds the path and something stands there */
  has(path: KeyPath): boolean;
  /** place of the value of a path, or of the deepest part of it that exists */
  locate(path: KeyPath): FileLocation;
  /** place of a key itself */
  locateKey(path: KeyPath, key: string): FileLocation;
}

/** Uses of aliases, those within other aliases counted as often as they are used. */
const MOST_ALIASES = 100;

/**
 * Parses a YAML file.
 *
 * @param text content
 * @param file name for messages
 * @throws {InputErrors} with the first syntax fault, or every repeated key, and its line
 */
export function parseYaml(text: string, file: string): YamlSource {
  const counter = new LineCounter();
  const { document, fault } = parseUpToFault(text, counter);
  const place = (offset: number): FileLocation => {
    const { line, col } = counter.linePos(offset);
    return { file, line, column: col };
  };
  if (fault !== undefined) {
    throw new InputErrors([new InputError(yamlMessage(fault), place(fault.offset))]);
  }
  const faults = repeatedKeys(document).map(({ key, offset }) =>
    new InputError(`The key "${key}" appears twice in the same section: keep one`, place(offset))
  );
  if (faults.length > 0) throw inFileOrder(faults);
  const plain = (): unknown => {
    try {
      return document.toJS({ maxAliasCount: MOST_ALIASES + 1 }); // the anchor counts too
    } catch (error) {
      // aliases without an anchor, or so many that they would fill the memory
      throw new InputErrors([
        new InputError(`Cannot read the YAML: ${(error as Error).message}`, { file, line: 1 }),
      ]);
    }
  };
  const nodeAt = (path: KeyPath): Node | null => {
    for (let length = path.length; length >= 0; length--) {
      const node = length === 0 ? document.contents : document.getIn(path.slice(0, length), true);
      if (node !== undefined && node !== null) return node as Node;
    }
    return null;
  };
  return {
    file,
    data: withoutEmptySections(plain()),
    has: (path) => document.hasIn(path) && document.getIn(path) !== null,
    locate(path) {
      const whole = path.length > 0 && document.hasIn(path);
      const pair = whole ? null : keyOf(nodeAt(path.slice(0, -1)), undefined);
      const node = pair ?? nodeAt(path);
      return node?.range ? place(node.range[0]) : { file, line: 1 };
    },
    locateKey(path, key) {
      const node = keyOf(nodeAt(path), key) ?? nodeAt(path);
      return node?.range ? place(node.range[0]) : { file, line: 1 };
    },
  };
}

/**
 * Place of a key that may have been left out: that of its section, and where the section is left out
 * too, that of the house, from which its defaults follow.
 */
export function placeOf(path: KeyPath, source: YamlSource): FileLocation {
  return source.has(path.slice(0, 1)) ? source.locate(path) : source.locateKey([], "house");
}

/** The text at a path, undefined where there is none. */
export function textAt(source: YamlSource, path: KeyPath): string | undefined {
  const value = path.reduce<unknown>(
    (part, key) => (part as Record<PropertyKey, unknown> | null | undefined)?.[key],
    source.data,
  );
  return typeof value === "string" ? value : undefined;
}

/** A fault of the parser in words for the person who wrote the file. */
function yamlMessage(fault: YamlFault): string {
  if (fault.code === "MULTIPLE_DOCS") {
    return 'Cannot read the YAML: a second document starts here ("---"); expected one';
  }
  if (fault.code === "TAB_AS_INDENT") {
    return "Cannot read the YAML: the line starts with a tab; indent with spaces";
  }
  return `Cannot read the YAML: ${fault.message}`;
}

/** The key node of a map: the one named, or the first. */
function keyOf(node: Node | null, key: string | undefined): Node | null {
  if (!isMap(node)) return null;
  const pairs = node.items as Pair[];
  const pair = key === undefined
    ? pairs[0]
    : pairs.find((item) => isScalar(item.key) && String(item.key.value) === key);
  return (pair?.key as Node | undefined) ?? null;
}

/** A section with nothing in it counts as left out. */
function withoutEmptySections(data: unknown): unknown {
  if (typeof data !== "object" || data === null || Array.isArray(data)) return data;
  return Object.fromEntries(Object.entries(data).filter(([, value]) => value !== null));
}
