import { assert, assertEquals } from "@std/assert";
import { join, relative } from "node:path";
import { PROJECT_FOLDER } from "../lib/commands/terminal.ts";
import { parseNotebook } from "../lib/press/mod.ts";

/** Phrases that no reader should meet, and what to write. */
const PHRASES: readonly (readonly [RegExp, string])[] = [
  [/\breckon(s|ed|ing)? with\b/i, "use, allow for"],
  [/\bhow long (is it|it is|the house is) how cold\b/i, "hours at or below each temperature"],
  [/\bexpect one card\b/i, "leave it out"],
  [/\bonly for who\b/i, "only if you"],
  [/\btold (at once|in a notice)\b/i, "reported together, raises a notice"],
  [/\bbelongs? into\b/i, "belongs in"],
  [/\bthe fan never on\b/i, "the fan always off"],
  [/\bmakes? no sense here\b/i, "is not worthwhile here"],
  [/\bfed with\b/i, "supplied with"],
  [/\bfor each kelvin between\b/i, "per kelvin between"],
  [/\bground water\b/i, "groundwater"],
  [/\bback ?up heat(er|ing)?\b/i, "back-up heat"],
  [/\bnight-curtain\b/i, "night curtain"],
];

/** Spellings, in prose only: code and styles need some of them. */
const SPELLINGS: readonly (readonly [RegExp, string])[] = [
  [/\bset-points?\b|\bsetpoints?\b/i, "set point"],
  [/\bcolors?\b/i, "colour"],
  [/\bgray\b/i, "grey"],
  [/\bliters?\b/i, "litre"],
  [/\bcenter(s|ed|ing)?\b/i, "centre"],
  [/\b\d+ (kilo|centi|milli)?meters?\b/i, "metre"],
  [/\bbehaviors?\b/i, "behaviour"],
  [/\bneighbor(s|ing)?\b/i, "neighbour"],
  [/\bvapors?\b|\bvaporiz/i, "vapour, vaporisation"],
  [/\bmold(s|y)?\b/i, "mould"],
  [/\b(model|label|travel)(ed|ing)\b/i, "modelled, labelled, travelled"],
  [/\b(optimiz|summariz|lineariz|recogniz)\w+/i, "-ise"],
];

interface Text {
  readonly name: string;
  readonly words: string;
  readonly prose: boolean;
}

/** Titles as they were printed, and names of units as the library of units writes them. */
const TITLES = /(^|\/)(sources\.(csv|md)|units\/scales\.csv)$/;

function filesIn(folder: string, end: RegExp): string[] {
  return [...Deno.readDirSync(folder)].flatMap((entry) => {
    const path = join(folder, entry.name);
    if (entry.isDirectory) return filesIn(path, end);
    return end.test(entry.name) ? [path] : [];
  });
}

function withoutComments(code: string): string {
  return code.replaceAll(/\/\*[\s\S]*?\*\//g, " ").replaceAll(/^\s*\/\/.*$/gm, " ");
}

function readText(path: string): Text {
  const name = relative(PROJECT_FOLDER, path);
  const content = Deno.readTextFileSync(path);
  if (name.endsWith(".ts")) return { name, words: withoutComments(content), prose: false };
  if (!name.endsWith(".ipynb")) return { name, words: content, prose: true };
  const cells = parseNotebook(content, name).cells;
  const words = cells.filter((cell) => cell.cell_type === "markdown").map((cell) => cell.source);
  return { name, words: words.join("\n"), prose: true };
}

function oddWords({ name, words, prose }: Text): string[] {
  const line = words.replaceAll(/\s+/g, " ");
  return [...PHRASES, ...(prose ? SPELLINGS : [])].flatMap(([pattern, better]) => {
    const found = pattern.exec(line);
    return found === null ? [] : [`${name}: "${found[0]}", better: ${better}`];
  });
}

const inProject = (path: string) => join(PROJECT_FOLDER, path);

Deno.test("oddWords() finds an odd phrase across a line break, and a spelling in prose only", () => {
  // Property: the check can fail
  const told = "All errors are told\nat once.";
  assertEquals(oddWords({ name: "a.md", words: told, prose: true }).length, 1);
  assertEquals(oddWords({ name: "a.ts", words: "color: red", prose: false }), []);
  assertEquals(oddWords({ name: "a.md", words: "a gray color", prose: true }).length, 2);
  assertEquals(oddWords({ name: "a.md", words: "All errors are reported.", prose: true }), []);
});

Deno.test("what a reader meets is free of odd phrases and in one spelling", () => {
  // Property: documents, tables, notebooks' text cells and the library's messages and labels
  const texts = [
    inProject("README.md"),
    inProject("DEVELOPERS.md"),
    ...filesIn(inProject("docs"), /\.md$/),
    ...filesIn(inProject("data"), /\.(csv|md|yaml)$/),
    ...filesIn(inProject("notebooks"), /\.ipynb$/),
    ...filesIn(inProject("lib"), /\.ts$/),
  ].filter((path) => !TITLES.test(path)).map(readText);
  assert(texts.length > 250, `only ${texts.length} texts read`);
  assertEquals(texts.flatMap(oddWords), []);
});
