/** Figures of the demo as the committed notebooks show them. @module */
import { parseHTML } from "linkedom";
import { listNotebooks } from "winterground/commands/notebook_files.ts";
import { parseNotebook } from "winterground/press/mod.ts";

/** Figures as the committed notebooks show them, by key. */
export async function shownFigures(): Promise<Map<string, string>> {
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
