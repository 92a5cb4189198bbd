import { assertEquals, assertThrows } from "@std/assert";
import fc from "fast-check";
import Papa from "papaparse";
import { findById, InputError, readDataTable } from "../../lib/basics/mod.ts";

const names = ["id", "value_m", "source"];

Deno.test("readDataTable() gives back any table of one-line cells, quoted or not", () => {
  // Property: inverse of writing
  const cell = fc.string({ maxLength: 12 }).map((text) => text.replace(/[\r\n#]/g, "").trim());
  const row = fc.tuple(fc.constant("x"), fc.double({ noNaN: true, noDefaultInfinity: true }), cell);
  fc.assert(fc.property(fc.array(row, { minLength: 1, maxLength: 8 }), (rows) => {
    const text = Papa.unparse([names, ...rows], { newline: "\n" });
    const read = readDataTable(text, "t.csv", names);
    rows.forEach(([id, value, source], i) => {
      assertEquals(read[i]!.text("id"), id);
      assertEquals(read[i]!.number("value_m"), value === 0 ? 0 : value);
      assertEquals(read[i]!.text("source"), source);
      assertEquals(read[i]!.line, i + 2);
    });
  }));
});

Deno.test("readDataTable() accepts a byte-order mark, remarks, blank lines and Windows line ends", () => {
  // Property: harmless differences between files
  const text = "\uFEFF# remark\r\nid,value_m,source\r\n\r\na,,me\r\n";
  const [row] = readDataTable(text, "t.csv", names);
  assertEquals(row!.numberOrNull("value_m"), null);
  assertEquals(row!.line, 4);
  assertThrows(() => row!.number("value_m"), InputError, "t.csv:4");
});

Deno.test("findById() lists what it knows", () => {
  // Property: bad input is told with the way out
  assertThrows(() => findById([{ id: "a" }, { id: "b" }], "c", "thing"), InputError, "a, b");
});
