// deno-lint-ignore-file camelcase -- the names of the notebook format
import { assertEquals, assertStringIncludes, assertThrows } from "@std/assert";
import fc from "fast-check";
import { InputError } from "winterground/basics/mod.ts";
import { blankTexts, countShows, formatNotebook, parseNotebook } from "winterground/press/mod.ts";
import { tinyNotebook } from "./tiny.ts";

Deno.test("formatNotebook() writes keys sorted, one space deep, texts as lines, line break last", () => {
  // Source: nbformat documentation [nbformat-web], "The Notebook file format" (multi-line strings
  // as lists) and the layout of nbformat's writer: sort_keys, indent 1, separators ", " and ": ",
  // final line break
  const text = formatNotebook(tinyNotebook("const a = 1;\nconst b = 2;"));
  const expected = `{
 "cells": [
  {
   "cell_type": "code",
   "execution_count": null,
   "id": "t0",
   "metadata": {},
   "outputs": [],
   "source": [
    "const a = 1;\\n",
    "const b = 2;"
   ]
  }
 ],
 "metadata": {},
 "nbformat": 4,
 "nbformat_minor": 5
}
`;
  assertEquals(text, expected);
});

Deno.test("parseNotebook() gives back what formatNotebook() took", () => {
  // Property: inverse of inverse
  fc.assert(
    fc.property(fc.array(fc.string(), { minLength: 1, maxLength: 4 }), (sources) => {
      const notebook = tinyNotebook(...sources);
      assertEquals(parseNotebook(formatNotebook(notebook), "a.ipynb"), notebook);
    }),
    { numRuns: 100 },
  );
});

Deno.test("parseNotebook() refuses what is no notebook and names the place", () => {
  // Source: nbformat documentation [nbformat-web], required fields of notebook, code cell and
  // output
  const bad: [unknown, string][] = [
    ["{", "Cannot read the notebook"],
    [{ nbformat: 3, nbformat_minor: 0, metadata: {}, cells: [] }, '"nbformat"'],
    [{ nbformat: 4, nbformat_minor: 5, metadata: {} }, '"cells"'],
    [cellWith({ outputs: undefined }), '"cells.0.outputs"'],
    [cellWith({ id: "no spaces allowed" }), '"cells.0.id"'],
    [cellWith({ outputs: [{ output_type: "display_data", data: {} }] }), "metadata"],
    [cellWith({ outputs: [{ output_type: "picture" }] }), "output_type"],
  ];
  for (const [content, part] of bad) {
    const text = typeof content === "string" ? content : JSON.stringify(content);
    const error = assertThrows(() => parseNotebook(text, "x.ipynb"), InputError);
    assertStringIncludes(error.message, "x.ipynb");
    assertStringIncludes(error.message, part);
  }
});

Deno.test("parseNotebook() refuses two cells of one id and names cells without one", () => {
  // Source: Jupyter Enhancement Proposal 62 [jep-62-2020], cell ids are unique within a notebook
  const [cell] = tinyNotebook("const a = 1;").cells;
  const twice = { nbformat: 4, nbformat_minor: 5, metadata: {}, cells: [cell, cell] };
  assertThrows(
    () => parseNotebook(JSON.stringify(twice), "x"),
    InputError,
    "two cells have the id",
  );
  const { id: _, ...nameless } = cell!;
  const old = { nbformat: 4, nbformat_minor: 4, metadata: {}, cells: [nameless, nameless] };
  const read = parseNotebook(JSON.stringify(old), "x");
  assertEquals(read.cells.map((cell) => cell.id), ["cell-0", "cell-1"]);
  assertEquals(read.nbformat_minor, 5);
});

function cellWith(change: Record<string, unknown>): unknown {
  const [cell] = tinyNotebook("const a = 1;").cells;
  return { nbformat: 4, nbformat_minor: 5, metadata: {}, cells: [{ ...cell, ...change }] };
}

Deno.test("countShows() counts calls, not comments, texts or longer names", () => {
  // Property: counts by hand
  assertEquals(countShows("await show(a);\nawait show (b);"), 2);
  assertEquals(countShows('// await show(a)\nconst t = "await show(a)"; /* await show(b) */'), 0);
  assertEquals(countShows("await showcase(a); await reshow(b); show(c)"), 0);
  assertEquals(countShows("await  show(`a ${b} await show(`)"), 1);
});

Deno.test("blankTexts() keeps length and line breaks", () => {
  // Property: positions stay the same
  fc.assert(fc.property(fc.string(), (code) => {
    const blank = blankTexts(code);
    assertEquals(blank.length, code.length);
    assertEquals(blank.split("\n").length, code.split("\n").length);
  }));
});
