import { assertEquals } from "@std/assert";
import { fileName } from "../../lib/basics/mod.ts";

Deno.test("fileName() leaves the folders of any machine out", () => {
  // Property: the last name of a path, whichever stroke parts it
  for (const path of ["/home/me/year.csv", "C:\\me\\year.csv", "a/b\\year.csv", "year.csv"]) {
    assertEquals(fileName(path), "year.csv");
  }
  assertEquals(fileName("folder/"), "");
});
