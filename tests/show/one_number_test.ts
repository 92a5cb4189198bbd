import { assert, assertEquals } from "@std/assert";
import { parseHTML } from "linkedom";
import { type Notebook, parseNotebook } from "../../lib/press/mod.ts";

const FOLDER = new URL("../../notebooks/", import.meta.url);

/** A number, a percentage or a quantity: what may differ; all else in a row belongs to its label. */
const NUMBER = /^[−-]?\d/;

/** Where a value stands, and which. */
interface Found {
  readonly where: string;
  readonly values: string;
}

function tablesOf(notebook: Notebook, name: string): { where: string; rows: string[][] }[] {
  return notebook.cells.flatMap((cell, index) => {
    if (cell.cell_type !== "code") return [];
    return cell.outputs.flatMap((output) => {
      if (output.output_type !== "display_data") return [];
      const html = String(output.data["text/html"] ?? "").replaceAll(/base64,[^"]+/g, "");
      const { document } = parseHTML(`<html><body>${html}</body></html>`);
      return [...document.querySelectorAll("table")].map((table) => ({
        where: `${name}, cell ${index + 1}`,
        rows: [...table.querySelectorAll("tr")].map((row) =>
          [...row.querySelectorAll("th, td")].map((part) =>
            (part.textContent ?? "").replaceAll(/\s+/g, " ").trim()
          )
        ),
      }));
    });
  });
}

/** Values of one table by label: the words of the row, and the head of the column. */
function labelled(rows: readonly string[][]): ReadonlyMap<string, string[]> {
  const [head, ...body] = rows;
  const found = new Map<string, string[]>();
  for (const row of body) {
    if (row.length !== head?.length || NUMBER.test(row[0]!)) continue;
    const words = row.filter((part) => part !== "" && !NUMBER.test(part)).join(" | ");
    row.forEach((part, column) => {
      if (!NUMBER.test(part)) return;
      const label = `${words} | ${head[column]}`;
      found.set(label, [...found.get(label) ?? [], part]);
    });
  }
  return found;
}

/** Figures of results.json that a table shows, label and both values by key, which stands last. */
function keyed(rows: readonly string[][]): ReadonlyMap<string, string> {
  if (!rows[0]?.at(-1)?.startsWith("key in results.json")) return new Map();
  return new Map(rows.slice(1).map((row) => [row.at(-1)!, row.slice(0, 3).join(" | ")]));
}

async function executedNotebooks(): Promise<readonly (readonly [string, Notebook])[]> {
  const names = [...Deno.readDirSync(FOLDER)].map(({ name }) => name)
    .filter((name) => name.endsWith(".ipynb")).sort();
  return await Promise.all(names.map(async (name) =>
    [
      name,
      parseNotebook(await Deno.readTextFile(new URL(name, FOLDER)), name),
    ] as const
  ));
}

/** Values under one name that differ, over all tables of the notebooks. */
async function differences(
  valuesOf: (rows: readonly string[][]) => Iterable<readonly [string, string]>,
): Promise<{ readonly names: number; readonly faults: readonly string[] }> {
  const known = new Map<string, Found>();
  const faults: string[] = [];
  for (const [name, notebook] of await executedNotebooks()) {
    for (const { where, rows } of tablesOf(notebook, name)) {
      for (const [label, values] of valuesOf(rows)) {
        const before = known.get(label);
        if (before === undefined) known.set(label, { where, values });
        else if (before.values !== values) {
          faults.push(`${label}: ${before.values} in ${before.where}, ${values} in ${where}`);
        }
      }
    }
  }
  return { names: known.size, faults };
}

Deno.test("no label of the workbook's tables has two values", async () => {
  // Property: one number for one thing, over all tables of the committed, executed notebooks
  const { names, faults } = await differences((rows) =>
    [...labelled(rows)].map(([label, list]) => [label, list.join("; ")] as const)
  );
  assert(names > 500, `only ${names} labels`);
  assertEquals(faults, []);
});

Deno.test("no figure of results.json stands with two values or labels in two notebooks", async () => {
  // Property: one number for one thing, by key, over all tables that name keys
  const { names, faults } = await differences(keyed);
  assert(names > 60, `only ${names} keys`);
  assertEquals(faults, []);
});
