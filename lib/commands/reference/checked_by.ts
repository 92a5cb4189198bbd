/**
 * Which test file checks a function, found from what the tests import and use.
 *
 * @module
 */
import { dirname, join } from "node:path/posix";
import type { TextFile } from "./bibliography.ts";

/** A test file that uses a function. */
export interface Check {
  readonly path: string;
  /** true where one of the tests that use it compares with a published source */
  readonly published: boolean;
}

const IMPORT = /\bimport\s+(?:type\s+)?(?:\{([^}]*)\}|\*\s+as\s+(\w+))\s+from\s+"([^"]+)"/g;
const EXPORT_FROM = /\bexport\s+(?:type\s+)?(?:\{([^}]*)\}|(\*))\s+from\s+"([^"]+)"/g;

/** The import names and relative paths of a project, resolved to its files. */
export interface Resolver {
  /** texts of the library by path in the project */
  readonly library: ReadonlyMap<string, string>;
  /** path in the project of an import name, such as `winterground/fan`; folders end in a slash */
  readonly names: ReadonlyMap<string, string>;
}

/** `a`, `b as c` and `type d` of a list in braces, as pairs of name there and name here. */
function namePairs(list: string): [string, string][] {
  return list.split(",").map((part) => part.trim().replace(/^type\s+/, "")).filter((part) =>
    part !== ""
  ).map((part) => {
    const [there, here] = part.split(/\s+as\s+/);
    return [there!, here ?? there!];
  });
}

function fileOf(specifier: string, from: string, { names }: Resolver): string | undefined {
  if (specifier.startsWith(".")) return join(dirname(from), specifier);
  const exact = names.get(specifier);
  if (exact !== undefined) return exact;
  for (const [name, path] of names) {
    if (name.endsWith("/") && specifier.startsWith(name)) {
      return join(path, specifier.slice(name.length));
    }
  }
  return undefined;
}

/** Follows what a module exports under a name to the file that defines it. */
export function definingFile(
  file: string,
  name: string,
  resolver: Resolver,
  seen: ReadonlySet<string> = new Set(),
): string | undefined {
  const text = resolver.library.get(file);
  if (text === undefined || seen.has(file)) return undefined;
  if (
    new RegExp(`^export (?:async )?(?:function\\*?|const|class|let) ${name}\\b`, "m").test(text)
  ) {
    return file;
  }
  for (const [, list, all, specifier] of text.matchAll(EXPORT_FROM)) {
    const pair = all === undefined
      ? namePairs(list!).find(([, here]) => here === name)
      : [name, name] as const;
    const next = pair && fileOf(specifier!, file, resolver);
    const found = next && definingFile(next, pair[0], resolver, new Set([...seen, file]));
    if (found !== undefined) return found;
  }
  return undefined;
}

/** Tests of a file as pieces of text, and whether each names a published source. */
function testsOf(text: string): { readonly text: string; readonly published: boolean }[] {
  const wholeFile = /^\/\/ Source:/.test(text);
  return text.split(/^(?=Deno\.test\(|\s+Deno\.test\()/m)
    .filter((part) => /^\s*Deno\.test\(/.test(part))
    .map((part) => ({ text: part, published: wholeFile || /^\s*\/\/ Source:/m.test(part) }));
}

/** Functions of the library that a test file imports: what it calls them, and where they are. */
function importedFunctions(file: TextFile, resolver: Resolver): [string, string][] {
  const found: [string, string][] = [];
  for (const [, list, space, specifier] of file.text.matchAll(IMPORT)) {
    const target = fileOf(specifier!, file.path, resolver);
    if (target === undefined) continue;
    const pairs = list === undefined
      ? [...file.text.matchAll(new RegExp(`\\b${space}\\.(\\w+)`, "g"))]
        .map(([used, name]) => [name!, used] as [string, string])
      : namePairs(list);
    for (const [there, here] of pairs) {
      const defined = definingFile(target, there, resolver);
      if (defined !== undefined) found.push([here, `${defined}#${there}`]);
    }
  }
  return found;
}

/**
 * The test files that use each function, by `file#name` of its definition. A file counts where it
 * imports the function by itself and uses it beyond the import.
 */
export function checkedBy(
  tests: readonly TextFile[],
  resolver: Resolver,
): Map<string, Check[]> {
  const checks = new Map<string, Check[]>();
  for (const file of tests) {
    const pieces = testsOf(file.text);
    const body = file.text.replace(IMPORT, "");
    for (const [here, key] of new Map(importedFunctions(file, resolver))) {
      const use = new RegExp(`(?<![\\w.])${here.replace(".", "\\.")}\\b`);
      if (!use.test(body)) continue;
      const published = pieces.some((piece) => piece.published && use.test(piece.text));
      checks.set(key, [...checks.get(key) ?? [], { path: file.path, published }]);
    }
  }
  return checks;
}
