import { assert, assertEquals } from "@std/assert";
import { basename, join } from "node:path";
import { PROJECT_FOLDER } from "winterground/commands/terminal.ts";
import { shownFigures } from "./harness/shown_figures.ts";

/** A page may say of a number which figure of the demo study it is: `<!-- store.savedHeat 3856 kWh -->`. */
const MARK = /<!-- ([a-z]+\.\w+) ([−-]?[\d ]+(?:\.\d+)?) (\S+) -->/g;
/** Share by which a page may lag behind the notebooks: rounding, and changes too small to tell of. */
const LAG = 0.005;

const numberOf = (text: string) =>
  Number(text.replaceAll(/[\s\u00a0\u202f]/g, "").replace("−", "-"));

/** What a page says otherwise than the figures. */
function pageFaults(name: string, text: string, figures: ReadonlyMap<string, string>): string[] {
  return Array.from(text.matchAll(MARK)).flatMap(([mark, key, said, unit]) => {
    const shown = figures.get(key!);
    if (shown === undefined) return [`${name}: no notebook shows ${key}`];
    const [, value, shownUnit] = /^([−-]?[\d\s\u00a0\u202f.]+)[\s\u00a0](\S+)$/.exec(shown) ?? [];
    if (value === undefined || shownUnit !== unit) return [`${name}: ${key} is ${shown}`];
    const decimals = said!.split(".")[1]?.length ?? 0;
    const room = Math.max(0.51 * 10 ** -decimals, LAG * Math.abs(numberOf(value)));
    if (Math.abs(numberOf(said!) - numberOf(value)) > room) {
      return [`${name} says ${said} of ${key}, which is ${shown}`];
    }
    return text.replaceAll(mark, "").includes(said!) ? [] : [`${name}: ${said} stands nowhere`];
  });
}

/** README and the pages of docs by their names. */
function pages(): (readonly [name: string, text: string])[] {
  const docs = join(PROJECT_FOLDER, "docs");
  const names = [...Deno.readDirSync(docs)].map(({ name }) => join(docs, name));
  return [join(PROJECT_FOLDER, "README.md"), ...names.filter((name) => /\.md$/.test(name))]
    .map((path) => [basename(path), Deno.readTextFileSync(path)] as const);
}

Deno.test("numbers of the demo that pages mark are those of the notebooks", async () => {
  // Property: README and docs against the committed outputs
  const figures = await shownFigures();
  assert(figures.size > 50, `only ${figures.size} figures`);
  const marks = pages().flatMap(([, text]) => [...text.matchAll(MARK)]);
  assert(marks.length >= 10, `only ${marks.length} numbers are marked`);
  assertEquals(pages().flatMap(([name, text]) => pageFaults(name, text, figures)), []);
});

/** Pages that a task writes or that tell of the past: their numbers are not the demo's of today. */
const WRITTEN = ["changes.md", "functions.md", "keys.md", "sources.md", "symbols.md"];
/** Units that the demo's results are told in. */
const RESULT = /\d[\s\u00a0]?(?:kWh|°C|degC|crowns|W\/K|h\b|hours\b)/;
/** How a page tells that numbers are of a certain day and are not renewed. */
const DATED = /\bas of\s+\d{1,2}\s+[A-Z][a-z]+\s+20\d\d\b/i;

/** Blocks of a page: paragraphs, lists, tables; a mark or a dated note belongs to what is above it. */
function blocksOf(text: string): string[] {
  const blocks: string[] = [];
  for (const block of text.replaceAll(/```[\s\S]*?```/g, "").split(/\n\s*\n/)) {
    const note = block.startsWith("<!--") || /^_?As of /.test(block);
    if (note && blocks.length > 0) blocks.push(`${blocks.pop()}\n${block}`);
    else blocks.push(block);
  }
  return blocks;
}

/** Sentences and tables that tell a result of the demo, and neither mark it, date it nor name the test that holds it. */
function unheldFigures(name: string, text: string): string[] {
  const blocks = blocksOf(text);
  return blocks.flatMap((block, k) => {
    const held = new RegExp(MARK.source).test(block) || DATED.test(block) ||
      [...block.matchAll(/`(tests\/[\w./]+\.ts)`/g)].some(([, path]) => exists(path!));
    if (held) return [];
    const told = block.startsWith("|")
      ? [`${blocks[k - 1] ?? ""}\n${block}`.replaceAll(/<!--.*?-->/g, "")].filter((both) =>
        /kWh|°C|degC|crowns/.test(block) && /\bdemo\b/.test(both)
      )
      : block.split(/(?<=[.;])\s+/).filter((sentence) =>
        !sentence.endsWith(":") && /\bdemo\b/.test(sentence) && RESULT.test(sentence)
      );
    return told.map((one) => `${name}: ${one.replaceAll(/\s+/g, " ").slice(-160)}`);
  });
}

function exists(path: string): boolean {
  try {
    return Deno.statSync(join(PROJECT_FOLDER, path)).isFile;
  } catch {
    return false;
  }
}

Deno.test("a result of the demo on a page is marked, dated, or held by a test that is named", () => {
  // Property: README and docs, sentence by sentence and table by table
  const ours = pages().filter(([name]) => !WRITTEN.includes(name));
  assertEquals(ours.flatMap(([name, text]) => unheldFigures(name, text)), []);
});

Deno.test("unheldFigures() finds a sentence and a table, and lets marked and dated ones pass", () => {
  // Property: the check above can fail
  const faults = (text: string) => unheldFigures("a.md", text).length;
  assertEquals(faults("The demo saves 3856 kWh a year."), 1);
  assertEquals(faults("The demo has 36 tubes. A heater of 5 kWh is another thing."), 0);
  assertEquals(faults("The demo saves 3856 kWh.\n<!-- store.savedHeat 3856 kWh -->"), 0);
  assertEquals(faults("The demo saves 3856 kWh. As of 26 November 2026."), 0);
  assertEquals(faults("On the demo:\n\n| heat, kWh |\n| --- |\n| 3856 |"), 1);
  assertEquals(
    faults("On the demo:\n\n| heat, kWh |\n| --- |\n| 3856 |\n\nAs of 26 November 2026."),
    0,
  );
  assertEquals(faults("The demo saves 3856 kWh, by `tests/docs_figures_test.ts`."), 0);
  assertEquals(faults("The demo saves 3856 kWh, by `tests/none_test.ts`."), 1);
});

Deno.test("pageFaults() finds a number that has moved, a unit, a key and a mark without its number", () => {
  // Property: each kind of fault; within rounding and half a per cent nothing
  const figures = new Map([["store.savedHeat", "3 856\u00a0kWh"], [
    "store.coldestHour",
    "−7.8\u00a0degC",
  ]]);
  const faults = (text: string) => pageFaults("a.md", text, figures).length;
  assertEquals(
    faults("3860 kWh <!-- store.savedHeat 3860 kWh --> −7.8 <!-- store.coldestHour −7.8 degC -->"),
    0,
  );
  assertEquals(faults("3956 kWh <!-- store.savedHeat 3956 kWh -->"), 1);
  assertEquals(faults("3856 kWh <!-- store.savedHeat 3856 MJ -->"), 1);
  assertEquals(faults("3856 kWh <!-- store.saved 3856 kWh -->"), 1);
  assertEquals(faults("<!-- store.savedHeat 3856 kWh -->"), 1);
});
