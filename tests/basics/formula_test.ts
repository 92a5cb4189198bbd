// Property: no cell of words is computed by a spreadsheet, and numbers stay numbers.
import { assert, assertEquals } from "@std/assert";
import fc from "fast-check";
import { wordsCell } from "winterground/basics/mod.ts";

Deno.test("wordsCell() puts formulas behind an apostrophe and leaves everything else", () => {
  for (
    const text of ["=cmd|' /C calc'!A0", "+1+cmd|x", "-2+3", "@SUM(1)", "\t=1", "\r=1", "=", "-"]
  ) {
    if (text === "-") assertEquals(wordsCell(text), "-");
    else if (text === "=") assertEquals(wordsCell(text), "=");
    else assertEquals(wordsCell(text), `'${text}`);
  }
  fc.assert(fc.property(fc.double({ noNaN: true, min: -1e6, max: 1e6 }), (number) => {
    const text = number.toFixed(3);
    assertEquals(wordsCell(text), text);
  }));
  fc.assert(fc.property(fc.string(), (text) => {
    assert(wordsCell(text).endsWith(text));
    assert(!/^[=+\-@][^\d.]/.test(wordsCell(text)));
  }));
});
