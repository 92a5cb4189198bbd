import { assert, assertEquals } from "@std/assert";

const DATA = new URL("../../data/", import.meta.url);

async function filesBelow(folder: URL, prefix = ""): Promise<string[]> {
  const found: string[] = [];
  for await (const entry of Deno.readDir(folder)) {
    const name = `${prefix}${entry.name}`;
    if (entry.isDirectory) {
      found.push(...await filesBelow(new URL(`${entry.name}/`, folder), `${name}/`));
    } else found.push(name);
  }
  return found.sort();
}

Deno.test("data/README.md lists every file of data/, with source and licence, and no other", async () => {
  // Property: list = folder
  const list = await Deno.readTextFile(new URL("README.md", DATA));
  const rows = list.split("\n").filter((line) => line.startsWith("| `"))
    .map((line) => line.split("|").map((cell) => cell.trim()));
  const listed = rows.map((cells) => cells[1]!.replaceAll("`", "")).sort();
  const there = (await filesBelow(DATA)).filter((name) => name !== "README.md");
  assertEquals(listed, there);
  for (const cells of rows) {
    for (const part of [2, 3, 4]) assert(cells[part] !== "", `${cells[1]} lacks a cell`);
  }
});
