// Property: the page of questions names places that are there: notebooks, their headings, pages, figures.
import { assert, assertEquals } from "@std/assert";
import fields from "../data/studies/fields.csv" with { type: "text" };
import { shownFigures } from "./harness/shown_figures.ts";

const page = await Deno.readTextFile(new URL("../docs/questions.md", import.meta.url));
const rows = page.split("\n").filter((line) => /^\| (?!question|-)/.test(line));

async function headings(notebook: string): Promise<string[]> {
  const text = await Deno.readTextFile(new URL(`../notebooks/${notebook}.ipynb`, import.meta.url));
  const { cells } = JSON.parse(text) as { cells: { cell_type: string; source: string[] }[] };
  return cells.filter((cell) => cell.cell_type === "markdown")
    .flatMap(({ source }) => source.join("").split("\n"))
    .flatMap((line) => /^##+ (.*)$/.exec(line)?.[1] ?? []);
}

Deno.test("every question has a place that answers it, and every place is there", async () => {
  assert(rows.length >= 50, `${rows.length} questions`);
  for (const row of rows) assert(/\]\(|`/.test(row.split("|")[2]!), row);
  const places = [...page.matchAll(/\[([^\]]+?): ([^\]]+)\]\(\.\.\/notebooks\/([^)]+)\.ipynb\)/g)];
  assert(places.length > 40, `${places.length} places`);
  for (const [, name, heading, notebook] of places) {
    assertEquals(name, notebook);
    assert((await headings(notebook!)).includes(heading!), `${notebook}: ${heading}`);
  }
  assertEquals(
    page.match(/\.ipynb\)/g)?.length,
    places.length,
    "links to notebooks name a heading",
  );
  for (const [, file] of page.matchAll(/\]\(([a-z-]+\.md)\)/g)) {
    await Deno.stat(new URL(`../docs/${file}`, import.meta.url));
  }
});

Deno.test("what the page of questions names in code is a figure of results.json or a key of the study", async () => {
  const known = new Set([
    ...(await shownFigures()).keys(),
    ...fields.split("\n").map((line) => line.split(",")[0]!),
  ]);
  const named = [...page.matchAll(/`([a-z]+\.\w+)`/g)].map(([, key]) => key!)
    .filter((key) => key !== "results.json");
  assert(named.length > 12, `${named}`);
  for (const key of named) assert(known.has(key), key);
});
