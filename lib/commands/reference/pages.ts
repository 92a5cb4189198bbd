/**
 * The text of the reference pages.
 *
 * @module
 */
import { citedKeys, linkCitations, type Source } from "./bibliography.ts";
import type { Check } from "./checked_by.ts";
import type { PublicFunction, PublicModule } from "./public_functions.ts";
import type { SymbolEntry } from "./symbols.ts";

const MADE = "_Made from the code by `deno task reference`: change the code, not this page._";

/** The page of the public functions. */
export function functionsPage(
  modules: readonly PublicModule[],
  checks: ReadonlyMap<string, readonly Check[]>,
): string {
  const blocks = [
    "# Functions",
    MADE,
    "Every public function: what it does, its parameters, where it comes from, and the test files " +
    "that use it. **Published values** marks a test that compares with a source outside the " +
    "project. Symbols are explained in [symbols.md](symbols.md), sources in [sources.md](sources.md).",
    modules.map(({ name, functions }) => `- [${name}](#${anchor(name)}): ${functions.length}`)
      .join("\n"),
  ];
  for (const { name, functions } of modules) {
    blocks.push(`## ${name}`);
    for (const each of functions) {
      blocks.push(...functionBlocks(each, checks.get(`${each.file}#${each.name}`) ?? []));
    }
  }
  return page(blocks);
}

function functionBlocks(each: PublicFunction, checks: readonly Check[]): string[] {
  const items = each.params.filter(({ meaning }) => meaning !== "")
    .map(({ name, meaning }) => `\`${name}\`: ${meaning}`);
  if (each.returns !== "") items.push(`gives ${each.returns}`);
  for (const text of each.throws) items.push(`throws ${text}`);
  if (each.source !== "") items.push(`source: ${linkCitations(each.source)}`);
  items.push(`checked in ${checkedText(checks)}`);
  return [
    `### ${each.name}`,
    ...each.does.map(linkCitations),
    items.map((item) => `- ${item}`).join("\n"),
  ];
}

function checkedText(checks: readonly Check[]): string {
  if (checks.length === 0) return "no test of its own, only through its callers";
  return [...checks].sort((a, b) => Number(b.published) - Number(a.published))
    .map(({ path, published }) => `\`${path}\`${published ? " (**published values**)" : ""}`)
    .join(", ");
}

/** The page of the symbols. */
export function symbolsPage(symbols: readonly SymbolEntry[]): string {
  const rows = symbols.map(({ symbol, meaning, unit, pages }) =>
    `| ${symbol} | ${meaning} | ${unit} | ${
      pages.map((path) => path.replace(/^docs\//, "")).map((name) => `[${name}](${name})`)
        .join(", ")
    } |`
  );
  return page([
    "# Symbols",
    MADE.replace("the code by", "the tables of symbols in the pages by")
      .replace("change the code", "change those tables"),
    "Letters that the formulas use, as the pages of the chapters explain them. One letter may mean " +
    "different things in different chapters. Temperatures are in degC unless a row says K.",
    ["| symbol | meaning | unit | page |", "| --- | --- | --- | --- |", ...rows].join("\n"),
  ]);
}

/** The page of the sources. */
export function sourcesPage(
  sources: readonly Source[],
  cited: ReadonlyMap<string, readonly string[]>,
): string {
  const withDoi = sources.filter(({ doi }) => doi !== "").length;
  return page([
    "# Sources",
    MADE.replace("the code by", "`data/sources/sources.csv` by")
      .replace("change the code", "change that table"),
    `${sources.length} published sources, ${withDoi} with a DOI. A comment, a row of a table or a ` +
    "page cites one by its key in square brackets. _Confirmed_ says what of it was seen when it was " +
    "entered: most papers are behind a paywall and were not read whole. Where a value itself was " +
    "recalled and not read again, the place that uses it says `from memory`.",
    ...sources.flatMap((source) => sourceBlocks(source, cited.get(source.key) ?? [])),
  ]);
}

function sourceBlocks(source: Source, paths: readonly string[]): string[] {
  const parts = [
    `${source.authors}${source.year === "" ? "" : ` (${source.year})`}.`,
    source.title === "" ? "" : `_${source.title}_.`,
    [source.container, source.locator, source.number].filter((text) => text !== "").join(", ") +
    ".",
    source.doi === "" ? "" : `DOI <https://doi.org/${encodeURI(source.doi)}>.`,
  ];
  return [
    `### ${source.key}`,
    parts.filter((text) => text !== "").join(" ").replace(/\.\.(\s|$)/g, ".$1"),
    `Confirmed: ${source.note}. Cited in ${paths.map((path) => `\`${path}\``).join(", ")}.`,
  ];
}

const DEFINITION = /^\[[a-z0-9-]+\]: sources\.md#.*\n?/gm;

/** A page of the documentation with the targets of its citations at the end. */
export function withSourceLinks(text: string): string {
  const bare = text.replace(DEFINITION, "").trimEnd();
  const keys = citedKeys(bare).sort();
  const links = keys.map((key) => `[${key}]: sources.md#${key}`).join("\n");
  return keys.length === 0 ? `${bare}\n` : `${bare}\n\n${links}\n`;
}

function anchor(name: string): string {
  return name.toLowerCase().replace(/[^\w -]/g, "").replace(/ /g, "-");
}

function page(blocks: readonly string[]): string {
  return `${blocks.join("\n\n")}\n`;
}
