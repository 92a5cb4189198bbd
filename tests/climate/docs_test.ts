import { assert, assertEquals } from "@std/assert";
import { parseColumns, readNormals } from "winterground/climate/mod.ts";
import page from "../../docs/climate-files.md" with { type: "text" };

function block(language: string): string {
  const match = new RegExp("```" + language + "\\n([\\s\\S]*?)```").exec(page);
  assert(match !== null, `no ${language} block`);
  return match[1]!;
}

Deno.test("the columns file of docs/climate-files.md is read as the page says", () => {
  // Property: the example of the page works
  const columns = parseColumns(block("yaml"), "docs/climate-files.md");
  assertEquals([columns.skipLines, columns.delimiter, columns.decimalComma], [1, ";", true]);
  assertEquals([columns.stampAt, columns.stampZone, columns.leaveOutLeapDay], ["start", -6, true]);
  assertEquals(columns.place?.elevation, 560);
  assertEquals(Object.keys(columns.columns), [
    "dryBulb",
    "relativeHumidity",
    "globalHorizontal",
    "windSpeed",
  ]);
});

Deno.test("the normals head of docs/climate-files.md is the one the reader takes", () => {
  // Property: the example of the page works
  const head = page.split("\n").find((line) => line.startsWith("month,mean_temperature"))!;
  const rows = Array.from({ length: 12 }, (_, month) => `${month + 1},1,5,-3,4,70,3,3`);
  assertEquals(readNormals([head, ...rows].join("\n"), "n.csv").windSpeed.length, 12);
});
