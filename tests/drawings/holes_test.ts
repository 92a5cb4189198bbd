import { assert, assertEquals } from "@std/assert";
import { drawSheets, headerHoles, holesCsv } from "winterground/drawings/mod.ts";
import Papa from "papaparse";
import { numberOf, openSvg, textBoxes } from "./boxes.ts";
import { exampleInputs, ODD_FIELDS } from "./example.ts";

Deno.test("the CSV lists every hole of the header, and the sheet as many as it has room for", () => {
  // Property: one row a hole; a table on the sheet is whole, or sends the reader to the CSV
  for (const [name, inputs] of Object.entries(ODD_FIELDS)) {
    const { holes } = headerHoles(inputs);
    assertEquals(holesCsv(headerHoles(inputs)).trim().split("\n").length, 1 + holes.length, name);
    const words = textBoxes(drawSheets(inputs, "A4")["header-holes-A4.svg"]!).map((box) =>
      box.words
    );
    const listed = holes.filter((hole) => words.some((one) => one.startsWith(`${hole.number}: `)));
    if (listed.length === holes.length) continue;
    assertEquals(listed, [], name);
    assert(words.some((one) => one.includes("drawings/header-holes.csv")), name);
    assert(holes.length > 50, name);
  }
});

Deno.test("hole numbers never overprint, from 1 to 200 tubes in one to three layers", () => {
  // Property: text boxes are disjoint; first and last hole of the header are numbered
  for (const layers of [1, 2, 3]) {
    for (const perLayer of [1, 2, 3, 5, 8, 13, 21, 34, 55, 90, 150, 200]) {
      if (layers * perLayer > 200) continue;
      const width = Math.max(6, perLayer * 0.25 + 2);
      const inputs = exampleInputs({
        layers,
        perLayer,
        groups: 1,
        spacing: 0.25,
        header: 0.5,
        houseLength: 12,
        houseWidth: width,
        length: 8,
      });
      for (const paper of ["A4", "Tabloid"] as const) {
        const name = `${layers} × ${perLayer} on ${paper}`;
        const svg = drawSheets(inputs, paper)[`header-holes-${paper}.svg`]!;
        const boxes = textBoxes(svg);
        const header = openSvg(svg).querySelector('rect[stroke="#8a4b08"]')!;
        const left = numberOf(header, "x");
        const right = left + numberOf(header, "width");
        const numbers = boxes.filter(({ words }) => /^\d+$/.test(words) && Number(words) > 0);
        assert(numbers.some(({ words }) => words === "1"), name);
        assert(numbers.some(({ words }) => words === String(layers * perLayer)), name);
        for (const one of numbers) {
          const crossed = [left, right].some((edge) => one.left < edge && edge < one.right);
          assert(!crossed || one.top > numberOf(header, "y") + numberOf(header, "height"), name);
        }
        for (const [index, one] of boxes.entries()) {
          for (const other of boxes.slice(index + 1)) {
            const apart = one.right <= other.left || other.right <= one.left ||
              one.bottom <= other.top || other.bottom <= one.top;
            assert(apart, `${name}: "${one.words}" overlaps "${other.words}"`);
          }
        }
      }
    }
  }
});

Deno.test("the list of holes has feet and inches first where the reader asks for them", () => {
  // Property: columns in feet and inches within half a sixteenth of an inch of those in metres
  const layout = headerHoles(exampleInputs());
  const [head, ...rows] = Papa.parse<string[]>(holesCsv(layout, "US").trim()).data;
  assertEquals(head!.slice(0, 2), ["hole", "along from first hole, ft-in"]);
  assertEquals(rows.length, layout.holes.length);
  layout.holes.forEach((hole, index) => {
    const text = rows[index]![1]!;
    const found = /^(?:(\d+)'-)?(?:(\d+)(?: (?=\d+\/)|(?=")))?(?:(\d+)\/(\d+))?"$/.exec(text)!;
    const [, feet = "0", inches = "0", part = "0", of = "1"] = found;
    const metres = 0.0254 * (12 * Number(feet) + Number(inches) + Number(part) / Number(of));
    assert(Math.abs(metres - hole.along) <= 0.0254 / 32 + 1e-9, `${text}: ${hole.along}`);
  });
  assert(!holesCsv(layout).includes("ft-in"));
});
