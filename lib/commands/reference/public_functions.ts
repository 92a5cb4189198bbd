/**
 * The public functions of the library, read from their doc comments.
 *
 * @module
 */

/** What `deno doc --json` tells, as far as it is used here. */
export interface DocOutput {
  readonly nodes: Readonly<Record<string, { readonly symbols: readonly DocSymbol[] }>>;
}

interface DocSymbol {
  readonly name: string;
  readonly declarations: readonly DocDeclaration[];
}

interface DocDeclaration {
  readonly kind: string;
  readonly location: { readonly filename: string; readonly line: number };
  readonly jsDoc?: { readonly doc?: string; readonly tags?: readonly DocTag[] };
  readonly def?: { readonly params?: readonly DocParam[] };
}

interface DocTag {
  readonly kind: string;
  readonly name?: string;
  readonly doc?: string;
  readonly tsType?: { readonly repr?: string } | string;
  readonly type?: string;
}

interface DocParam {
  readonly kind: string;
  readonly name?: string;
  readonly left?: DocParam;
  readonly arg?: DocParam;
}

/** A public function. */
export interface PublicFunction {
  readonly name: string;
  /** file that defines it, as a path in the project */
  readonly file: string;
  readonly line: number;
  /** what it does: the first paragraphs of its doc comment */
  readonly does: readonly string[];
  /** the paragraph that names its source, empty where there is none */
  readonly source: string;
  readonly params: readonly { readonly name: string; readonly meaning: string }[];
  readonly returns: string;
  readonly throws: readonly string[];
}

/** One public module and its functions by name. */
export interface PublicModule {
  /** what a notebook imports, such as `winterground/fan` */
  readonly name: string;
  readonly functions: readonly PublicFunction[];
}

const SOURCE = /^Source(?: of the \w+)?: /;

/**
 * Lists the functions of the public modules.
 *
 * @param doc what `deno doc --json` printed
 * @param exported file address of each public module by its import name
 * @param root address of the project's folder, with a slash at the end
 */
export function publicFunctions(
  doc: DocOutput,
  exported: ReadonlyMap<string, string>,
  root: string,
): PublicModule[] {
  return [...exported].map(([name, address]) => ({
    name,
    functions: (doc.nodes[address]?.symbols ?? []).flatMap((symbol) => {
      const found = symbol.declarations.find(({ kind }) => kind === "function");
      return found === undefined ? [] : [describe(symbol.name, found, root)];
    }).sort((a, b) => (a.name < b.name ? -1 : 1)),
  }));
}

function describe(name: string, found: DocDeclaration, root: string): PublicFunction {
  const tags = found.jsDoc?.tags ?? [];
  const paragraphs = plain(found.jsDoc?.doc ?? "").split(/\n\s*\n/)
    .map((text) => text.replace(/\s*\n\s*/g, " ").trim())
    .filter((text) => text !== "" && !text.startsWith("```"));
  const meanings = new Map(
    tags.filter(({ kind }) => kind === "param").map((tag) => [tag.name, oneLine(tag.doc)]),
  );
  return {
    name,
    file: found.location.filename.replace(root, ""),
    line: found.location.line,
    does: paragraphs.filter((text) => !SOURCE.test(text)),
    source: paragraphs.find((text) => SOURCE.test(text))?.replace(SOURCE, "") ?? "",
    params: (found.def?.params ?? []).map((param, index) => {
      const own = paramName(param) ?? [...meanings.keys()][index] ?? `argument ${index + 1}`;
      return { name: own, meaning: meanings.get(own) ?? "" };
    }),
    returns: oneLine(tags.find(({ kind }) => kind === "return")?.doc),
    throws: tags.filter(({ kind }) => kind === "throws").map(throwsText),
  };
}

function paramName(param: DocParam): string | undefined {
  return param.name ?? param.left?.name ?? param.arg?.name;
}

function throwsText(tag: DocTag): string {
  const type = tag.type ?? (typeof tag.tsType === "string" ? tag.tsType : tag.tsType?.repr);
  return `${type === undefined ? "" : `\`${type}\` `}${oneLine(tag.doc)}`.trim();
}

function oneLine(text: string | undefined): string {
  return plain(text ?? "").replace(/\s*\n\s*/g, " ").trim();
}

function plain(text: string): string {
  return text.replace(/\{@link (?:[^}|]*\|)?\s*([^}]*?)\s*\}/g, "`$1`");
}
