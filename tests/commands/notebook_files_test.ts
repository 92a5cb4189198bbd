import { assertEquals, assertThrows } from "@std/assert";
import { InputError } from "winterground/basics/mod.ts";
import { listNotebooks, selectNotebooks } from "winterground/commands/notebook_files.ts";

Deno.test("listNotebooks() gives numbered notebooks by number and nothing else", async () => {
  // Property: order by number, not by text
  const folder = await Deno.makeTempDir();
  const names = ["10-report.ipynb", "02-soil.ipynb", "9-x.ipynb", "notes.ipynb", "03-a.txt"];
  for (const name of names) await Deno.writeTextFile(`${folder}/${name}`, "");
  const found = (await listNotebooks(folder)).map((file) => file.name);
  await Deno.remove(folder, { recursive: true });
  assertEquals(found, ["02-soil", "9-x", "10-report"]);
});

Deno.test("selectNotebooks() takes numbers and ranges, and refuses what does not exist", () => {
  // Property: choice by hand
  const files = [0, 1, 2, 3, 10].map((number) => ({ name: `${number}-x`, number, path: "" }));
  const numbers = (choice: string) => selectNotebooks(files, choice).map((file) => file.number);
  assertEquals(numbers("1-3"), [1, 2, 3]);
  assertEquals(numbers("10, 0-1"), [0, 1, 10]);
  for (const wrong of ["", "a", "3-1", "1-", "4", "1-4", "-1", "1.5"]) {
    assertThrows(() => numbers(wrong), InputError);
  }
});
