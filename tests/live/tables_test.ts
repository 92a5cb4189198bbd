import { assert, assertEquals } from "@std/assert";
import { join } from "node:path";
import Papa from "papaparse";
import { PROJECT_FOLDER } from "winterground/commands/terminal.ts";
import { leanTable } from "winterground/live/build/lean_table.ts";
import tableLine from "winterground/live/build/table_line.ts";
import { liveScript } from "winterground/live/build/live_script.ts";

const { worker, page } = await liveScript();
const tables = [...new Set([...Object.keys(worker.files), ...Object.keys(page.files)])]
  .filter((path) => path.endsWith(".csv"));

const rowsOf = (text: string) =>
  Papa.parse<string[]>(text.trim()).data.filter(([first]) => !first!.startsWith("#"));

Deno.test("the tables in a page's script hold what the project's hold, without their sources", async () => {
  // Property: cell by cell, read by the package that the project reads them with
  assert(tables.length > 8, `only ${tables.length} tables seen`);
  for (const path of tables) {
    const text = await Deno.readTextFile(join(PROJECT_FOLDER, path));
    const [head, ...rows] = rowsOf(text);
    const source = head!.indexOf("source");
    const expected = rows.map((row) => row.map((cell, k) => k === source ? "" : cell));
    assertEquals(rowsOf(leanTable(text)), [head!, ...expected], path);
  }
});

Deno.test("the page's reader of lines reads them as the package does", async () => {
  // Source: papaparse, on every line of these tables and on quoted cells
  const lines = ['a,"b, c",""', '"say ""so""",2,', ",,", "1"];
  for (const path of tables) {
    const text = leanTable(await Deno.readTextFile(join(PROJECT_FOLDER, path)));
    lines.push(...text.split("\n"));
  }
  for (const line of lines) {
    const expected = Papa.parse<string[]>(line, { delimiter: "," }).data[0];
    assertEquals(tableLine.parse(line).data[0], expected, line);
  }
});
