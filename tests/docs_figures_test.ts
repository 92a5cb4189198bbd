import { assert, assertEquals } from "@std/assert";
import { parseHTML } from "linkedom";
import { basename, join } from "node:path";
import { listNotebooks } from "winterground/commands/notebook_files.ts";
import { PROJECT_FOLDER } from "winterground/commands/terminal.ts";
import { parseNotebook } from "winterground/press/mod.ts";

/** A page may say of a number which figure of the demo study it is: `<!-- store.savedHeat 3856 kWh -->`. */
const MARK = /<!-- ([a-z]+\.\w+) ([−-]?[\d ]+(?:\.\d+)?) (\S+) -->/g;
/** Share by which a page may lag behind the notebooks: rounding, and changes too small to tell of. */
const LAG = 0.005;

/** Figures as the committed notebooks show them, by key. */
async function shownFigures(): Promise<Map<string, string>> {
  const figures = new Map<string, string>();
  for (const { path } of await listNotebooks()) {
    for (const cell of parseNotebook(await Deno.readTextFile(path), path).cells) {
      if (cell.cell_type !== "code") continue;
      for (const output of cell.outputs) {
        const html = "data" in output ? String(output.data["text/html"] ?? "") : "";
        if (!html.includes("key in results.json")) continue;
        const { document } = parseHTML(`<html><body>${html}</body></html>`);
        for (const row of document.querySelectorAll("tbody tr")) {
          const cells = [...row.children].map(({ textContent }) => textContent ?? "");
          figures.set(cells.at(-1)!, cells[1]!);
        }
      }
    }
  }
  return figures;
}

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

Deno.test("numbers of the demo that pages mark are those of the notebooks", async () => {
  // Property: README and docs against the committed outputs
  const figures = await shownFigures();
  assert(figures.size > 50, `only ${figures.size} figures`);
  const docs = join(PROJECT_FOLDER, "docs");
  const names = [...Deno.readDirSync(docs)].map(({ name }) => join(docs, name));
  const pages = [join(PROJECT_FOLDER, "README.md"), ...names.filter((name) => /\.md$/.test(name))];
  const texts = pages.map((path) => [basename(path), Deno.readTextFileSync(path)] as const);
  const marks = texts.flatMap(([, text]) => [...text.matchAll(MARK)]);
  assert(marks.length >= 10, `only ${marks.length} numbers are marked`);
  assertEquals(texts.flatMap(([name, text]) => pageFaults(name, text, figures)), []);
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
