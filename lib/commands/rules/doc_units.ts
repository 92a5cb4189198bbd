/**
 * Every number that a public function takes or returns, and every number of a public type, says its
 * unit in its doc comment. Read from what `deno doc --json` prints.
 *
 * @module
 */
import { namesUnit, saysUnit } from "./unit_words.ts";

/** What `deno doc --json` prints, as far as it is read here. */
export interface DocPages {
  readonly nodes: Readonly<Record<string, { readonly symbols: readonly DocSymbol[] }>>;
}

interface DocSymbol {
  readonly name: string;
  readonly declarations: readonly Declaration[];
}

interface Comment {
  readonly doc?: string;
  readonly tags?: readonly {
    readonly kind: string;
    readonly name?: string;
    readonly doc?: string;
  }[];
}

interface Declaration {
  readonly kind: string;
  readonly location: { readonly filename: string; readonly line: number };
  readonly jsDoc?: Comment;
  readonly def: {
    readonly params?: readonly Param[];
    readonly returnType?: unknown;
    readonly properties?: readonly Property[];
    readonly tsType?: unknown;
  };
}

interface Param {
  readonly kind: string;
  readonly name?: string;
  readonly left?: Param;
  readonly right?: string;
  readonly tsType?: unknown;
}

interface Property {
  readonly name: string;
  readonly jsDoc?: Comment;
  readonly tsType?: unknown;
}

/** Numbers that stand in lists of numbers: typed arrays and their readable kin. */
const SERIES = /^(?:Float(?:32|64)Array|U?[Ii]nt(?:8|16|32)Array)$/;
/** Types around numbers that stay numbers. */
const AROUND = /^(?:Array|ReadonlyArray|ArrayLike|Readonly|Iterable)$/;

/**
 * True where a type as printed is a number, a series or list of numbers, or one of these or null. What
 * may also be text carries its unit itself, or is shown as it is.
 */
export function isNumeric(type: unknown): boolean {
  if (type === null || typeof type !== "object") return false;
  const { kind, value } = type as { readonly kind: string; readonly value: unknown };
  if (kind === "keyword") return value === "number";
  if (kind === "array" || kind === "parenthesized") return isNumeric(value);
  if (kind === "typeOperator") return isNumeric((value as { readonly tsType: unknown }).tsType);
  if (kind === "union") {
    const parts = value as readonly { readonly value: unknown }[];
    return parts.some(isNumeric) && !parts.some((part) => part.value === "string");
  }
  if (kind !== "typeRef") return false;
  const { typeName, typeParams } = value as {
    readonly typeName: string;
    readonly typeParams?: readonly unknown[];
  };
  return SERIES.test(typeName) || (AROUND.test(typeName) && (typeParams ?? []).some(isNumeric));
}

function words({ doc = "", tags = [] }: Comment = {}): string {
  return [doc, ...tags.map((tag) => tag.doc ?? "")].join("\n");
}

/** The words that belong to a parameter: its own tag, or all that is said where it has none. */
function wordsOf(comment: Comment | undefined, kind: string, name?: string): string {
  const tag = comment?.tags?.find((one) => one.kind === kind && one.name === name);
  return tag === undefined ? words(comment) : tag.doc ?? "";
}

/** Numbers of one declaration that say no unit; a unit in the words of a type holds for its fields. */
function unsaid(declaration: Declaration): string[] {
  const { kind, def, jsDoc } = declaration;
  if (kind === "interface") {
    if (namesUnit(words(jsDoc))) return [];
    return (def.properties ?? []).filter((one) =>
      isNumeric(one.tsType) && !saysUnit(words(one.jsDoc))
    ).map((one) => `field "${one.name}"`);
  }
  if (kind === "variable") {
    return isNumeric(def.tsType) && !saysUnit(words(jsDoc)) ? ["its value"] : [];
  }
  if (kind !== "function") return [];
  const params = (def.params ?? []).map((param) =>
    param.kind === "assign"
      ? { name: param.left?.name, numeric: isNumeric(param.left?.tsType) }
      : { name: param.name, numeric: isNumeric(param.tsType) }
  ).filter(({ name, numeric }) => numeric && !saysUnit(wordsOf(jsDoc, "param", name)));
  const result = isNumeric(def.returnType) && !saysUnit(wordsOf(jsDoc, "return"));
  return [...params.map(({ name }) => `"${name}"`), ...result ? ["what it returns"] : []];
}

/**
 * Numbers without a unit in the public modules.
 *
 * @param pages what `deno doc --json` printed for them
 * @param shown how a file's address is shown in a message
 */
export function unitFaults(pages: DocPages, shown: (address: string) => string): string[] {
  const found = new Set<string>();
  for (const { symbols } of Object.values(pages.nodes)) {
    for (const { name, declarations } of symbols) {
      for (const declaration of declarations) {
        const { filename, line } = declaration.location;
        for (const what of unsaid(declaration)) {
          found.add(`${shown(filename)}:${line}: ${name}: ${what} has no unit in its doc comment`);
        }
      }
    }
  }
  return [...found].sort((a, b) => a.localeCompare(b, "en", { numeric: true }));
}
