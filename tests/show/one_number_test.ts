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

Deno.test("no label of the workbook's tables has two values", async () => {
  // Property: one number for one thing, over all tables of the committed, executed notebooks
  const known = new Map<string, Found>();
  const faults: string[] = [];
  for (const { name } of [...Deno.readDirSync(FOLDER)].sort((a, b) => a.name < b.name ? -1 : 1)) {
    if (!name.endsWith(".ipynb")) continue;
    const text = await Deno.readTextFile(new URL(name, FOLDER));
    for (const { where, rows } of tablesOf(parseNotebook(text, name), name)) {
      for (const [label, list] of labelled(rows)) {
        const values = list.join("; ");
        const before = known.get(label);
        if (before === undefined) known.set(label, { where, values });
        else if (before.values !== values) {
          faults.push(`${label}: ${before.values} in ${before.where}, ${values} in ${where}`);
        }
      }
    }
  }
  assert(known.size > 500, `only ${known.size} labels`);
  assertEquals(faults, []);
});
